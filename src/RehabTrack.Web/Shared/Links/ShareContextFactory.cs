using Microsoft.AspNetCore.Http.Features;

namespace RehabTrack.Web.Shared.Links;

/// <summary>
/// Takes the secret of a share link out of the path before the request is begun, so that no logger, scope or trace ever sees it, however much
/// is logged.
/// </summary>
public sealed class ShareContextFactory(IServiceProvider services) : IHttpContextFactory
{
    private readonly DefaultHttpContextFactory _contexts = new(services);

    /// <inheritdoc />
    public HttpContext Create(IFeatureCollection featureCollection)
    {
        ArgumentNullException.ThrowIfNull(featureCollection);
        if (
            featureCollection.Get<IHttpRequestFeature>() is { } request
            && ShareAddress.Read(request.PathBase + request.Path) is { } address
        )
        {
            featureCollection.Set(address);
            request.PathBase = "";
            request.Path = ShareAddress.Prefix;
            request.RawTarget = ShareAddress.Prefix;
        }

        return _contexts.Create(featureCollection);
    }

    /// <inheritdoc />
    public void Dispose(HttpContext httpContext) => _contexts.Dispose(httpContext);
}
