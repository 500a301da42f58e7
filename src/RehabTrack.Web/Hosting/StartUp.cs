using System.Globalization;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

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
            await using WebApplication app = WebHost.Build(options);
            await app.StartAsync();
            Announce(app, options);
            await app.WaitForShutdownAsync();
            return 0;
        }
        catch (StartRefusedException refused)
        {
            await Console.Error.WriteLineAsync(refused.Message);
            return Refused;
        }
    }

    private static void Announce(WebApplication app, StartOptions options)
    {
        string addresses = string.Join(
            ", ",
            app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()?.Addresses ?? []
        );
        string text = options.IsDemo ? Wording.StartUpTexts.RunningDemo : Wording.StartUpTexts.Running;
        Console.Out.WriteLine(string.Format(CultureInfo.InvariantCulture, text, addresses, options.DataFolder));
    }
}
