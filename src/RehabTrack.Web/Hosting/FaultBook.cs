using System.Diagnostics;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.Net.Http.Headers;
using RehabTrack.Wording;

namespace RehabTrack.Web.Hosting;

/// <summary>
/// Writes what broke into the log under a number, and tells the number and nothing else: a program as problem JSON, a person by the page for
/// errors.
/// </summary>
public sealed class FaultBook(ILogger<FaultBook> log) : IExceptionHandler
{
    /// <summary>The number of the request's fault.</summary>
    public static string NumberOf(HttpContext? context) => Activity.Current?.TraceId.ToString() ?? context?.TraceIdentifier ?? "";

    /// <summary>Whether who asks wants JSON and no page.</summary>
    public static bool WantsJson(HttpRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        string accepted = request.Headers[HeaderNames.Accept].ToString();
        return accepted.Contains("json", StringComparison.OrdinalIgnoreCase)
            && !accepted.Contains("text/html", StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Tells a status to a program.</summary>
    public static Task WriteJsonAsync(HttpContext context, int status)
    {
        ArgumentNullException.ThrowIfNull(context);
        return Results
            .Problem(
                statusCode: status,
                title: status switch
                {
                    StatusCodes.Status400BadRequest => ShellTexts.NotTakenTitle,
                    StatusCodes.Status403Forbidden => ShellTexts.NotAllowedTitle,
                    StatusCodes.Status404NotFound => ShellTexts.NotFoundTitle,
                    StatusCodes.Status429TooManyRequests => ShellTexts.TooMuchTitle,
                    _ => ShellTexts.ErrorTitle,
                },
                type: "about:blank",
                extensions: new Dictionary<string, object?>(StringComparer.Ordinal) { ["id"] = NumberOf(context) }
            )
            .ExecuteAsync(context);
    }

    /// <inheritdoc />
    public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(httpContext);
        log.LogError(exception, "Fault {Number}", NumberOf(httpContext));
        if (!WantsJson(httpContext.Request))
        {
            return false;
        }

        httpContext.Response.StatusCode = StatusCodes.Status500InternalServerError;
        await WriteJsonAsync(httpContext, StatusCodes.Status500InternalServerError);
        return true;
    }
}
