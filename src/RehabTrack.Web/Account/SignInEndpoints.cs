using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Start;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Account;

/// <summary>Lets people of the demo in without a password, and lets anybody out.</summary>
public static class SignInEndpoints
{
    /// <summary>Maps the addresses.</summary>
    public static void MapSignIn(this IEndpointRouteBuilder endpoints)
    {
        if (endpoints.ServiceProvider.GetRequiredService<AppMode>().IsDemo)
        {
            endpoints.MapPost("/sign-in/as", SignInAsync).AllowAnonymous().DisableAntiforgery();
        }

        endpoints.MapPost("/sign-out", (Delegate)SignOutAsync).AllowAnonymous().DisableAntiforgery();
    }

    private static async Task<IResult> SignInAsync(HttpContext context, SignInDoor door, SignInDesk desk)
    {
        CheckedForm posted = await CheckedForm.ReadAsync(context);
        if (!posted.IsGood)
        {
            return posted.Refusal ?? Results.LocalRedirect("/sign-in");
        }

        if (!Guid.TryParse(posted.Form["person"], out Guid person) || await door.FindAsync(person, context.RequestAborted) is not { } actor)
        {
            return Results.LocalRedirect("/sign-in");
        }

        SignInStep step = await desk.InAsync(context, actor, posted.Form["returnUrl"]);
        return Results.LocalRedirect(step.Address!);
    }

    private static async Task<IResult> SignOutAsync(HttpContext context, SessionDoor sessions)
    {
        CheckedForm posted = await CheckedForm.ReadAsync(context);
        if (!posted.IsGood)
        {
            return posted.Refusal ?? Results.LocalRedirect("/");
        }

        if (ActorClaims.Read(context.User) is { SessionId: not null } actor)
        {
            await sessions.EndAsync(actor, context.RequestAborted);
        }

        await context.SignOutAsync(CookieAuthenticationDefaults.AuthenticationScheme);
        return Results.LocalRedirect("/sign-in");
    }
}
