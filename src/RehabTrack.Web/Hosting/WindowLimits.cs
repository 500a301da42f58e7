using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Endpoints;
using RehabTrack.Records.Rights;
using RehabTrack.Web.Account;

namespace RehabTrack.Web.Hosting;

/// <summary>
/// Holds the number of live pages within its limits. A connection counts as long as it is open; so it has to be one connection, a WebSocket,
/// and not the many short questions that stand in for one. A page that would want one more says so, instead of staying without life.
/// </summary>
public static class WindowLimits
{
    /// <summary>Answers 429 to one too many, and 400 to a live connection that is no WebSocket. Comes after the authorization.</summary>
    public static IApplicationBuilder UseWindowLimits(this IApplicationBuilder app) =>
        app.Use(
            (context, next) =>
                HttpMethods.IsGet(context.Request.Method) && ActorClaims.Read(context.User) is { } actor
                    ? HoldAsync(context, actor, next)
                    : next(context)
        );

    private static async Task HoldAsync(HttpContext context, Actor actor, RequestDelegate next)
    {
        OpenWindows windows = context.RequestServices.GetRequiredService<OpenWindows>();
        // The route takes a slash at the end, too.
        if (string.Equals(context.Request.Path.Value?.TrimEnd('/'), SameOriginSockets.HubPath, StringComparison.OrdinalIgnoreCase))
        {
            if (!context.WebSockets.IsWebSocketRequest)
            {
                context.Response.StatusCode = StatusCodes.Status400BadRequest;
                return;
            }

            using IDisposable? window = windows.TryOpen(actor.PersonId, context.Connection.RemoteIpAddress);
            if (window is null)
            {
                context.Response.StatusCode = StatusCodes.Status429TooManyRequests;
                return;
            }

            await next(context);
            return;
        }

        if (IsLive(context.GetEndpoint()?.Metadata) && windows.IsFull(actor.PersonId, context.Connection.RemoteIpAddress))
        {
            context.Response.StatusCode = StatusCodes.Status429TooManyRequests;
            return;
        }

        await next(context);
    }

    private static bool IsLive(EndpointMetadataCollection? marks) =>
        marks?.GetMetadata<ComponentTypeMetadata>() is not null && marks.GetMetadata<ExcludeFromInteractiveRoutingAttribute>() is null;
}
