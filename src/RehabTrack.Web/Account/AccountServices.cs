using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Rights;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Account;

/// <summary>Puts signing in together: the hasher and the counting of ASP.NET Core Identity over our accounts, and the cookie of a session.</summary>
public static class AccountServices
{
    /// <summary>Rounds of PBKDF2 with SHA-512: OWASP Password Storage Cheat Sheet (read from memory).</summary>
    private const int HashRounds = 210_000;

    /// <summary>Adds it.</summary>
    public static void AddAccounts(this IServiceCollection services, AppMode mode)
    {
        ArgumentNullException.ThrowIfNull(mode);
        SignInSettings settings = new();
        services
            .AddIdentityCore<SignInAccount>(identity =>
            {
                identity.Lockout.MaxFailedAccessAttempts = settings.TriesBeforeLock;
                identity.Lockout.DefaultLockoutTimeSpan = settings.LockTime;
                // Names are looked at where they are chosen.
                identity.User.AllowedUserNameCharacters = "";
            })
            .AddUserStore<AccountUserStore>();
        services.Configure<PasswordHasherOptions>(hasher => hasher.IterationCount = HashRounds);
        services.AddSingleton<SecretSeal>();
        services.AddSingleton<SignInLimits>();
        services.AddSingleton<SetUpCode>();
        services.AddSingleton<KnownBrowsers>();
        services.AddSingleton<HalfSignIn>();
        services.AddSingleton<DecoyAccount>();
        services.AddScoped<PasswordCheck>();
        services.AddScoped<SignInDesk>();
        services.AddScoped<ConfirmationDesk>();
        services.AddScoped<CurrentActor>();
        services.AddCascadingAuthenticationState();
        services.AddAuthorization(Policies.Add);
        services
            .AddAuthentication(CookieAuthenticationDefaults.AuthenticationScheme)
            .AddCookie(cookie => ConfigureCookie(cookie, mode, settings));
    }

    private static void ConfigureCookie(CookieAuthenticationOptions cookie, AppMode mode, SignInSettings settings)
    {
        cookie.Cookie.Name = mode.CookieName();
        cookie.Cookie.HttpOnly = true;
        cookie.Cookie.SameSite = SameSiteMode.Strict;
        cookie.Cookie.Path = "/";
        cookie.Cookie.SecurePolicy = mode.IsSealed ? CookieSecurePolicy.Always : CookieSecurePolicy.SameAsRequest;
        cookie.LoginPath = "/sign-in";
        cookie.ReturnUrlParameter = "returnUrl";
        cookie.ExpireTimeSpan = settings.IdleTime;
        cookie.SlidingExpiration = true;
        // A page that is not theirs is answered as such, not by a detour.
        cookie.Events.OnRedirectToAccessDenied = context =>
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return RefusedPages.NoteAsync(context.HttpContext);
        };
        Func<RedirectContext<CookieAuthenticationOptions>, Task> toSignIn = cookie.Events.OnRedirectToLogin;
        cookie.Events.OnRedirectToLogin = context =>
        {
            if (context.HttpContext.GetEndpoint() is null)
            {
                // It leads nowhere, so nobody goes back to it: it may be the mistyped address of a secret.
                context.RedirectUri = new Uri(context.RedirectUri).GetLeftPart(UriPartial.Path);
            }

            return toSignIn(context);
        };
        cookie.Events.OnValidatePrincipal = ValidateAsync;
    }

    private static async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        HttpContext http = context.HttpContext;
        Actor? actor = ActorClaims.Read(context.Principal);
        if (actor is null || !await http.RequestServices.GetRequiredService<SessionDoor>().LivesAsync(actor, http.RequestAborted))
        {
            context.RejectPrincipal();
            await http.SignOutAsync(CookieAuthenticationDefaults.AuthenticationScheme);
        }
    }
}
