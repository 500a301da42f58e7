using System.Globalization;
using System.Threading.RateLimiting;
using Microsoft.Net.Http.Headers;
using RehabTrack.Web.Account;
using RehabTrack.Web.Shared.Links;

namespace RehabTrack.Web.Hosting;

/// <summary>How often what costs much may be asked: by a person who is signed in, else by a network address.</summary>
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

    private static readonly TimeSpan Window = TimeSpan.FromMinutes(1);

    /// <summary>Declares them.</summary>
    public static void AddRateLimits(this IServiceCollection services, ServingLimits limits)
    {
        ArgumentNullException.ThrowIfNull(limits);
        services.AddRateLimiter(limiter =>
        {
            limiter.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            limiter.OnRejected = (refused, _) =>
            {
                refused.HttpContext.Response.Headers[HeaderNames.RetryAfter] = Window.TotalSeconds.ToString(CultureInfo.InvariantCulture);
                return ValueTask.CompletedTask;
            };
            limiter.AddPolicy(Files, context => AMinute(context, limits.FilesPerMinute));
            limiter.AddPolicy(Uploads, context => AMinute(context, limits.UploadsPerMinute));
            limiter.AddPolicy(Calendars, context => AMinute(context, limits.CalendarsPerMinute));
            limiter.AddPolicy(Health, context => AMinute(context, limits.HealthPerMinute));
        });
    }

    private static RateLimitPartition<string> AMinute(HttpContext context, int most) =>
        RateLimitPartition.GetFixedWindowLimiter(
            Asker(context),
            _ => new FixedWindowRateLimiterOptions { PermitLimit = most, Window = Window }
        );

    private static string Asker(HttpContext context) =>
        ActorClaims.Read(context.User) is { } actor
            ? actor.PersonId.ToString("N")
            : ShareLimits.NetworkOf(context.Connection.RemoteIpAddress);
}
