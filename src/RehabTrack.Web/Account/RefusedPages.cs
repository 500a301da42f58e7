using RehabTrack.Records.History;

namespace RehabTrack.Web.Account;

/// <summary>Notes in the trail who asked for a page, a file or a form that is not for their role.</summary>
public static class RefusedPages
{
    /// <summary>Notes it when somebody is known and the address leads somewhere; by the pattern of the address, which holds no id and no secret.</summary>
    public static async Task NoteAsync(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (ActorClaims.Read(context.User) is { } actor && context.GetEndpoint() is RouteEndpoint { RoutePattern.RawText: { } pattern })
        {
            AccessBook book = context.RequestServices.GetRequiredService<AccessBook>();
            await book.NoteRefusalAsync(actor, $"{context.Request.Method} /{pattern.TrimStart('/')}");
        }
    }
}
