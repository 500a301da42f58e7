using System.Text;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Net.Http.Headers;
using RehabTrack.Records.Start;

namespace RehabTrack.Web.Shared.Links;

/// <summary>Writes the answer of a dead link, the same for every reason: unknown, expired, taken back, ended, or not behind this link.</summary>
public sealed class DeadLinkAnswer(ShareDoor door, IServiceProvider services, ILoggerFactory logs)
{
    /// <summary>Writes it with status 404, or 429 when too much was asked.</summary>
    public async Task WriteAsync(HttpContext context, bool busy)
    {
        ArgumentNullException.ThrowIfNull(context);
        byte[] page = Encoding.UTF8.GetBytes(await RenderAsync(await door.PhoneAsync(context.RequestAborted), busy));
        HttpResponse response = context.Response;
        response.Clear();
        response.StatusCode = busy ? StatusCodes.Status429TooManyRequests : StatusCodes.Status404NotFound;
        response.ContentType = "text/html; charset=utf-8";
        response.ContentLength = page.Length;
        if (busy)
        {
            response.Headers[HeaderNames.RetryAfter] = ShareLimits.RetryAfter;
        }

        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await response.Body.WriteAsync(page, context.RequestAborted);
        }
    }

    private async Task<string> RenderAsync(string? phone, bool busy)
    {
        await using HtmlRenderer renderer = new(services, logs);
        Dictionary<string, object?> given = new() { [nameof(DeadLink.Phone)] = phone, [nameof(DeadLink.Busy)] = busy };
        return await renderer.Dispatcher.InvokeAsync(async () =>
            (await renderer.RenderComponentAsync<DeadLink>(ParameterView.FromDictionary(given))).ToHtmlString()
        );
    }
}
