using System.Globalization;
using Microsoft.Net.Http.Headers;
using RehabTrack.Web.Account;

namespace RehabTrack.Web.Hosting;

/// <summary>
/// How often what costs much may be asked: by a person who is signed in, else by a network; what needs nobody to be signed in, by a network
/// whoever asks.
/// </summary>
public static class RateLimits
{
    /// <summary>Files that are taken out: sheets, exports, reports, single calendar entries.</summary>
    public const string Files = "files";

    /// <summary>Files that are handed in.</summary>
    public const string Uploads = "uploads";

    /// <summary>Calendars under a secret address.</summary>
    public const string Calendars = "calendars";

    /// <summary>The state of the server.</summary>
    public const string Health = "health";

    /// <summary>Declares them.</summary>
    public static void AddRateLimits(this IServiceCollection services, ServingLimits limits)
    {
        ArgumentNullException.ThrowIfNull(limits);
        services.AddRateLimiter(limiter =>
        {
            limiter.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            limiter.OnRejected = (refused, _) =>
            {
                refused.HttpContext.Response.Headers[HeaderNames.RetryAfter] = Askers.Minute.TotalSeconds.ToString(
                    CultureInfo.InvariantCulture
                );
                return ValueTask.CompletedTask;
            };
            limiter.AddPolicy(Files, context => Askers.Counted(Asker(context), limits.FilesPerMinute, Askers.Minute));
            limiter.AddPolicy(Uploads, context => Askers.Counted(Asker(context), limits.UploadsPerMinute, Askers.Minute));
            limiter.AddPolicy(Calendars, context => Askers.Counted(Network(context), limits.CalendarsPerMinute, Askers.Minute));
            limiter.AddPolicy(Health, context => Askers.Counted(Network(context), limits.HealthPerMinute, Askers.Minute));
        });
    }

    private static string Asker(HttpContext context) =>
        ActorClaims.Read(context.User) is { } actor ? actor.PersonId.ToString("N") : Network(context);

    private static string Network(HttpContext context) => Askers.NetworkOf(context.Connection.RemoteIpAddress);
}
