using Microsoft.Net.Http.Headers;

namespace RehabTrack.Web.Hosting;

/// <summary>Refuses a live connection that another site's page opened: browsers send cookies along, and the framework does not look.</summary>
public static class SameOriginSockets
{
    /// <summary>Where live pages connect.</summary>
    public const string HubPath = "/_blazor";

    /// <summary>Answers 403 to a hub request whose Origin is not this server; a request without Origin comes from no browser page.</summary>
    public static IApplicationBuilder UseSameOriginSockets(this IApplicationBuilder app) =>
        app.Use(
            (context, next) =>
            {
                if (
                    (
                        context.WebSockets.IsWebSocketRequest
                        || context.Request.Path.StartsWithSegments(HubPath, StringComparison.OrdinalIgnoreCase)
                    ) && IsForeign(context.Request)
                )
                {
                    context.Response.StatusCode = StatusCodes.Status403Forbidden;
                    return Task.CompletedTask;
                }

                return next(context);
            }
        );

    private static bool IsForeign(HttpRequest request) =>
        request.Headers[HeaderNames.Origin] is [{ Length: > 0 } origin, ..]
        && !string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase);
}
