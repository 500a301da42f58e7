using RehabTrack.Records.Sqlite;

namespace RehabTrack.Web.Hosting;

/// <summary>What a supervisor asks: whether the program runs, and whether it can keep records. Strangers learn no more than that.</summary>
public static class Health
{
    /// <summary>Whether the program runs.</summary>
    public const string Live = "/health/live";

    /// <summary>Whether the database answers, is of this version, and the data folder can be written.</summary>
    public const string Ready = "/health/ready";

    /// <summary>Maps the addresses.</summary>
    public static void MapHealth(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapGet(Live, () => Results.Text("live")).AllowAnonymous().RequireRateLimiting(RateLimits.Health);
        endpoints.MapGet(Ready, ReadyAsync).AllowAnonymous().RequireRateLimiting(RateLimits.Health);
    }

    private static async Task<IResult> ReadyAsync(SqliteStart start, CancellationToken cancellation) =>
        await start.IsReadyAsync(cancellation)
            ? Results.Text("ready")
            : Results.Text("not ready", statusCode: StatusCodes.Status503ServiceUnavailable);
}
