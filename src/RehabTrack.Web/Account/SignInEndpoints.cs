using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Start;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Account;

/// <summary>Gives and takes the sign-in cookie. Until passwords exist, the machine's own screen is the lock: nobody else can reach the server.</summary>
public static class SignInEndpoints
{
    /// <summary>Maps the addresses.</summary>
    public static void MapSignIn(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapPost("/sign-in/as", SignInAsync).AllowAnonymous().DisableAntiforgery();
        endpoints.MapPost("/sign-out", (Delegate)SignOutAsync).AllowAnonymous().DisableAntiforgery();
    }

    private static async Task<IResult> SignInAsync(HttpContext context, SignInDoor door)
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

        await context.SignInAsync(CookieAuthenticationDefaults.AuthenticationScheme, ActorClaims.Write(actor));
        string? wanted = posted.Form["returnUrl"];
        return Results.LocalRedirect(RightsTable.IsStaff(actor.Role) && IsLocal(wanted) ? wanted! : HomeOf.Person(actor.Role));
    }

    private static async Task<IResult> SignOutAsync(HttpContext context)
    {
        CheckedForm posted = await CheckedForm.ReadAsync(context);
        if (!posted.IsGood)
        {
            return posted.Refusal ?? Results.LocalRedirect("/");
        }

        await context.SignOutAsync(CookieAuthenticationDefaults.AuthenticationScheme);
        return Results.LocalRedirect("/sign-in");
    }

    private static bool IsLocal(string? address) =>
        address is ['/', ..] && !address.StartsWith("//", StringComparison.Ordinal) && !address.StartsWith("/\\", StringComparison.Ordinal);
}
