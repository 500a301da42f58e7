using Microsoft.Net.Http.Headers;
using RehabTrack.Web.Account;
using RehabTrack.Web.Shared.Links;

namespace RehabTrack.Web.Hosting;

/// <summary>The headers that every answer carries, so that a browser runs nothing that is not ours and frames nothing of ours.</summary>
public static class SecurityHeaders
{
    /// <summary>What a page may load. Style attributes are allowed because the component library writes them.</summary>
    public const string ContentPolicy =
        "default-src 'self'; script-src 'self'; style-src 'self' 'unsafe-inline'; connect-src 'self'; "
        + "img-src 'self' data: blob:; media-src 'self' blob:; font-src 'self'; form-action 'self'; object-src 'none'; "
        + "base-uri 'self'; frame-ancestors 'none'";

    /// <summary>Adds the headers to every answer, errors included.</summary>
    public static IApplicationBuilder UseSecurityHeaders(this IApplicationBuilder app) =>
        app.Use(
            (context, next) =>
            {
                context.Response.OnStarting(() =>
                {
                    IHeaderDictionary headers = context.Response.Headers;
                    bool isSecret = InvitationAddress.Of(context) is not null || ShareAddress.Of(context) is not null;
                    headers.ContentSecurityPolicy = ContentPolicy;
                    headers.XContentTypeOptions = "nosniff";
                    headers.XFrameOptions = "DENY";
                    headers["Referrer-Policy"] = isSecret ? "no-referrer" : "same-origin";
                    headers["Cross-Origin-Opener-Policy"] = "same-origin";
                    headers["Cross-Origin-Resource-Policy"] = "same-origin";
                    headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=(), payment=(), usb=()";
                    if (isSecret)
                    {
                        headers.CacheControl = "no-store";
                        headers["X-Robots-Tag"] = "noindex, nofollow";
                    }
                    else if (!headers.ContainsKey(HeaderNames.CacheControl))
                    {
                        // Pages and what is taken out of the records; what may be kept (scripts, styles, pictures) says so itself.
                        headers.CacheControl = "no-store";
                    }

                    return Task.CompletedTask;
                });
                return next(context);
            }
        );
}
