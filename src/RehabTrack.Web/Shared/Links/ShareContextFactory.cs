using Microsoft.AspNetCore.Http.Features;
using RehabTrack.Web.Account;

namespace RehabTrack.Web.Shared.Links;

/// <summary>
/// Takes the secret of a share link, and of an invitation, out of the path before the request is begun, so that no logger, scope or trace ever sees it, however much
/// is logged.
/// </summary>
public sealed class ShareContextFactory(IServiceProvider services) : IHttpContextFactory
{
    private readonly DefaultHttpContextFactory _contexts = new(services);

    /// <inheritdoc />
    public HttpContext Create(IFeatureCollection featureCollection)
    {
        ArgumentNullException.ThrowIfNull(featureCollection);
        if (featureCollection.Get<IHttpRequestFeature>() is { } request)
        {
            string path = Plain(request.PathBase + request.Path);
            if (ShareAddress.Read(path) is { } share)
            {
                featureCollection.Set(share);
                Hide(request, ShareAddress.Prefix);
            }
            else if (InvitationAddress.Read(path) is { } invitation)
            {
                featureCollection.Set(invitation);
                Hide(request, InvitationAddress.Prefix);
            }
        }

        return _contexts.Create(featureCollection);
    }

    /// <inheritdoc />
    public void Dispose(HttpContext httpContext) => _contexts.Dispose(httpContext);

    /// <summary>
    /// A link that was copied with one slash too many, or with slashes that something on the way encoded, is the same link; as another address its
    /// secret would go on into logs and into the address of the sign-in.
    /// </summary>
    private static string Plain(string path) =>
        "/" + path.Replace("%2F", "/", StringComparison.OrdinalIgnoreCase).Replace('\\', '/').TrimStart('/');

    private static void Hide(IHttpRequestFeature request, string instead)
    {
        request.PathBase = "";
        request.Path = instead;
        request.RawTarget = instead;
    }
}
