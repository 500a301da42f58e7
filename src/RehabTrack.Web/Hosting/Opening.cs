using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Start;
using RehabTrack.Wording;

namespace RehabTrack.Web.Hosting;

/// <summary>What is done once before the server answers: the database made ready, a practice there to sign in to, summaries up to date.</summary>
public static class Opening
{
    /// <summary>Does it.</summary>
    /// <exception cref="StartException">The database cannot be used.</exception>
    public static async Task RunAsync(IServiceProvider services, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(services);
        await services.GetRequiredService<SqliteStart>().RunAsync(cancellation);
        await services
            .GetRequiredService<EnsureLocalPractice>()
            .RunAsync(new LocalPractice(StartUpTexts.LocalPractice, StartUpTexts.LocalVet, TimeZoneInfo.Local.Id, "en"), cancellation);
        await services.GetRequiredService<RenewSummaries>().RunAsync(cancellation: cancellation);
    }
}
