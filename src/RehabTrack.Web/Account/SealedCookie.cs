using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.AspNetCore.DataProtection;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Account;

/// <summary>A value that a browser carries for us and can neither read nor change, for a time.</summary>
/// <typeparam name="T">The value.</typeparam>
public sealed class SealedCookie<T>(IDataProtectionProvider protection, AppMode mode, string name)
    where T : class
{
    private readonly ITimeLimitedDataProtector _protector = protection.CreateProtector($"RehabTrack.{name}").ToTimeLimitedDataProtector();

    private string Name { get; } = mode.CookieName(name);

    /// <summary>Gives it to the browser.</summary>
    /// <param name="context">The request.</param>
    /// <param name="value">The value.</param>
    /// <param name="time">For how long it counts.</param>
    /// <param name="isKept">Whether the browser keeps it when it is closed.</param>
    public void Write(HttpContext context, T value, TimeSpan time, bool isKept)
    {
        ArgumentNullException.ThrowIfNull(context);
        context.Response.Cookies.Append(
            Name,
            _protector.Protect(JsonSerializer.Serialize(value), time),
            Looks(context, isKept ? time : null)
        );
    }

    /// <summary>What the browser carries; null when it carries nothing, something too old, or something that is not ours.</summary>
    public T? Read(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (context.Request.Cookies[Name] is not { } text)
        {
            return null;
        }

        try
        {
            return JsonSerializer.Deserialize<T>(_protector.Unprotect(text));
        }
        catch (Exception foreign) when (foreign is CryptographicException or JsonException)
        {
            return null;
        }
    }

    /// <summary>Takes it away.</summary>
    public void Clear(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        context.Response.Cookies.Delete(Name, Looks(context, null));
    }

    private static CookieOptions Looks(HttpContext context, TimeSpan? time) =>
        new()
        {
            HttpOnly = true,
            IsEssential = true,
            MaxAge = time,
            Path = "/",
            SameSite = SameSiteMode.Strict,
            Secure = context.Request.IsHttps,
        };
}
