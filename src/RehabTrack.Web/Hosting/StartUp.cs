using System.Globalization;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Start;
using RehabTrack.Web.Account;

namespace RehabTrack.Web.Hosting;

/// <summary>From the command line to a running server, or to a sentence that says why not.</summary>
public static class StartUp
{
    /// <summary>The exit code of a start that was refused.</summary>
    public const int Refused = 2;

    /// <summary>Runs until the server is stopped.</summary>
    public static async Task<int> RunAsync(string[] arguments)
    {
        try
        {
            StartOptions options = StartOptions.Parse(arguments);
            // After a power cut nobody should wait: the model is made while the server is put together.
            Task model = Task.Run(SqliteRecordsServices.MakeModel);
            await using WebApplication app = WebHost.Build(options);
            await model;
            await Opening.RunAsync(app.Services, options);
            await app.StartAsync();
            await AnnounceAsync(app, options);
            await app.WaitForShutdownAsync();
            return 0;
        }
        catch (Exception refused) when (refused is StartRefusedException or StartException)
        {
            await Console.Error.WriteLineAsync(refused.Message);
            return Refused;
        }
        catch (IOException busy) when (busy.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException)
        {
            await Console.Error.WriteLineAsync(
                string.Format(CultureInfo.InvariantCulture, Wording.StartUpTexts.AddressInUse, busy.Message)
            );
            return Refused;
        }
    }

    private static async Task AnnounceAsync(WebApplication app, StartOptions options)
    {
        string addresses = string.Join(
            ", ",
            app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()?.Addresses ?? []
        );
        string text = options.IsDemo ? Wording.StartUpTexts.RunningDemo : Wording.StartUpTexts.Running;
        Console.Out.WriteLine(string.Format(CultureInfo.InvariantCulture, text, addresses, options.DataFolder));
        if (!options.IsDemo && await app.Services.GetRequiredService<SetUpDoor>().FindAsync() is not null)
        {
            Console.Out.WriteLine(
                string.Format(
                    CultureInfo.InvariantCulture,
                    Wording.StartUpTexts.SetUpCode,
                    app.Services.GetRequiredService<SetUpCode>().Text
                )
            );
        }
    }
}
