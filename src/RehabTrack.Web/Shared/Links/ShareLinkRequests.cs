using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Diagnostics;
using RehabTrack.Records.Start;
using RehabTrack.Web.Account;
using RehabTrack.Web.Components;

namespace RehabTrack.Web.Shared.Links;

/// <summary>
/// What happens to a request under a share link. The door looks the link up and makes it the base of all addresses, so that the pages of owner
/// and trainer serve it as they serve those who signed in. The guard puts the link's person before the page, whoever else is signed in, and
/// lets through only what is marked and allowed. Whatever else comes of the request is answered as a dead link.
/// </summary>
public static class ShareLinkRequests
{
    /// <summary>Adds what door and guard need.</summary>
    public static void AddShareLinks(this IServiceCollection services)
    {
        services.AddSingleton<IHttpContextFactory, ShareContextFactory>();
        services.AddSingleton<ShareLimits>();
        services.AddSingleton<DeadLinkAnswer>();
    }

    /// <summary>The door: before routing, since it says which path is asked for.</summary>
    public static IApplicationBuilder UseShareDoor(this IApplicationBuilder app) =>
        app.Use((context, next) => Asked(context) is { } address ? DoorAsync(context, address, next) : next(context));

    /// <summary>The guard: after authentication, since the link counts and not the cookie; before authorization.</summary>
    public static IApplicationBuilder UseShareGuard(this IApplicationBuilder app) =>
        app.Use((context, next) => ShareAddress.Of(context) is { } address ? GuardAsync(context, address, next) : next(context));

    // What broke under a link is told by the page for errors, which the guard lets pass.
    private static ShareAddress? Asked(HttpContext context) => IsError(context) ? null : ShareAddress.Of(context);

    private static bool IsError(HttpContext context) => context.Features.Get<IExceptionHandlerFeature>() is not null;

    private static async Task DoorAsync(HttpContext context, ShareAddress address, RequestDelegate next)
    {
        if (context.Features.Get<IStatusCodePagesFeature>() is { } statusPages)
        {
            statusPages.Enabled = false;
        }

        IServiceProvider services = context.RequestServices;
        DeadLinkAnswer dead = services.GetRequiredService<DeadLinkAnswer>();
        ShareLimits limits = services.GetRequiredService<ShareLimits>();
        if (!limits.MayAsk(context.Connection.RemoteIpAddress))
        {
            await dead.WriteAsync(context, busy: true);
            return;
        }

        address.Actor = await services
            .GetRequiredService<ShareDoor>()
            .FindAsync(AddressSecret.HashOf(address.Secret), context.RequestAborted);
        if (address.Actor is not { } actor)
        {
            await dead.WriteAsync(context, busy: !limits.CountWrong(context.Connection.RemoteIpAddress));
            return;
        }

        context.Request.PathBase = ShareAddress.PathOf(address.Secret);
        context.Request.Path = address.Rest is "" or "/" ? HomeOf.Person(actor.Role) : address.Rest;
        // Whoever tells of the request when it is over must not find the secret in its address.
        context.Response.OnCompleted(() =>
        {
            (context.Request.PathBase, context.Request.Path) = ("", ShareAddress.Prefix);
            return Task.CompletedTask;
        });
        Stream answer = context.Response.Body;
        using MemoryStream page = new();
        context.Response.Body = page;
        try
        {
            await next(context);
        }
        finally
        {
            context.Response.Body = answer;
        }

        if (context.Response.StatusCode >= StatusCodes.Status400BadRequest)
        {
            await dead.WriteAsync(context, busy: context.Response.StatusCode == StatusCodes.Status429TooManyRequests);
            return;
        }

        page.Position = 0;
        await page.CopyToAsync(answer, context.RequestAborted);
    }

    private static async Task GuardAsync(HttpContext context, ShareAddress address, RequestDelegate next)
    {
        if (address.Actor is { } actor)
        {
            context.User = ActorClaims.Write(actor);
        }

        if (!IsError(context) && !await IsBehindLinkAsync(context))
        {
            await RefusedPages.NoteAsync(context);
            context.Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }

        await next(context);
    }

    private static async Task<bool> IsBehindLinkAsync(HttpContext context)
    {
        if (context.GetEndpoint()?.Metadata is not { } marks || marks.GetMetadata<BehindLinkAttribute>() is null)
        {
            return false;
        }

        IServiceProvider services = context.RequestServices;
        AuthorizationPolicy? policy = await AuthorizationPolicy.CombineAsync(
            services.GetRequiredService<IAuthorizationPolicyProvider>(),
            marks.GetOrderedMetadata<IAuthorizeData>()
        );
        return policy is not null
            && (await services.GetRequiredService<IAuthorizationService>().AuthorizeAsync(context.User, context, policy)).Succeeded;
    }
}
