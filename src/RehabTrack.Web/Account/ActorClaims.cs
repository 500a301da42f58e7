using System.Security.Claims;
using Microsoft.AspNetCore.Authentication.Cookies;
using RehabTrack.Records.Rights;

namespace RehabTrack.Web.Account;

/// <summary>The actor as the sign-in cookie carries it. The gate of the records looks the person up again at every use case.</summary>
public static class ActorClaims
{
    private const string Practice = "practice";
    private const string Share = "share";
    private const string Session = "session";

    /// <summary>What the cookie is made of.</summary>
    public static ClaimsPrincipal Write(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return new ClaimsPrincipal(
            new ClaimsIdentity(
                [
                    new Claim(ClaimTypes.NameIdentifier, actor.PersonId.ToString()),
                    new Claim(Practice, actor.PracticeId.ToString()),
                    new Claim(ClaimTypes.Role, actor.Role.ToString()),
                    new Claim(ClaimTypes.Name, actor.Name),
                    .. actor.ShareId is { } share ? [new Claim(Share, share.ToString())] : Array.Empty<Claim>(),
                    .. actor.SessionId is { } session ? [new Claim(Session, session.ToString())] : Array.Empty<Claim>(),
                ],
                CookieAuthenticationDefaults.AuthenticationScheme
            )
        );
    }

    /// <summary>The actor, or null when nobody is signed in.</summary>
    public static Actor? Read(ClaimsPrincipal? principal) =>
        principal?.Identity?.IsAuthenticated == true
        && Guid.TryParse(principal.FindFirstValue(ClaimTypes.NameIdentifier), out Guid person)
        && Guid.TryParse(principal.FindFirstValue(Practice), out Guid practice)
        && Enum.TryParse(principal.FindFirstValue(ClaimTypes.Role), out Role role)
            ? new Actor(practice, person, role, principal.FindFirstValue(ClaimTypes.Name) ?? "")
            {
                ShareId = Guid.TryParse(principal.FindFirstValue(Share), out Guid share) ? share : null,
                SessionId = Guid.TryParse(principal.FindFirstValue(Session), out Guid session) ? session : null,
            }
            : null;
}
