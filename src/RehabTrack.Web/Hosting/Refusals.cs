using System.Collections.Frozen;
using Microsoft.AspNetCore.Diagnostics;
using RehabTrack.Web.Shared.Links;

namespace RehabTrack.Web.Hosting;

/// <summary>How a request that was refused is answered: a program gets problem JSON, a person the page that tells of the status.</summary>
public static class Refusals
{
    private static readonly FrozenSet<int> Noted =
    [
        StatusCodes.Status400BadRequest,
        StatusCodes.Status403Forbidden,
        StatusCodes.Status413PayloadTooLarge,
        StatusCodes.Status429TooManyRequests,
    ];

    /// <summary>Comes right after the pages for errors and states.</summary>
    public static IApplicationBuilder UseRefusals(this IApplicationBuilder app)
    {
        ArgumentNullException.ThrowIfNull(app);
        ILogger log = app.ApplicationServices.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(Refusals).FullName!);
        return app.Use((context, next) => TellAsync(context, next, log));
    }

    private static async Task TellAsync(HttpContext context, RequestDelegate next, ILogger log)
    {
        if (context.Features.Get<IStatusCodeReExecuteFeature>() is not null || context.Features.Get<IExceptionHandlerFeature>() is not null)
        {
            // The page that tells what came of a form is read, not posted to: else it would refuse the form once more, with its own status.
            context.Request.Method = HttpMethods.Get;
            await next(context);
            return;
        }

        await next(context);
        HttpResponse response = context.Response;
        if (Noted.Contains(response.StatusCode))
        {
            // The kind of address only: what was asked for may be a secret.
            log.LogWarning(
                "Refused {Status} {Method} {Route}",
                response.StatusCode,
                context.Request.Method,
                (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText
            );
        }

        if (response is { HasStarted: false, StatusCode: StatusCodes.Status400BadRequest, ContentLength: null, ContentType: not null })
        {
            // A page refuses a form with a type and not one letter: an empty window. Without the type it is told like every other refusal.
            response.ContentType = null;
        }

        if (
            response is { HasStarted: false, StatusCode: >= StatusCodes.Status400BadRequest, ContentLength: null, ContentType: null }
            && ShareAddress.Of(context) is null
            && FaultBook.WantsJson(context.Request)
        )
        {
            await FaultBook.WriteJsonAsync(context, response.StatusCode);
        }
    }
}
