using System.Net;
using System.Text.RegularExpressions;

namespace RehabTrack.Web.Tests.Walk;

/// <summary>An answer, without what differs by chance, so that two can be held against each other.</summary>
/// <param name="Status">The status.</param>
/// <param name="Location">Where it sends to; "" when nowhere.</param>
/// <param name="Content">What it says.</param>
internal sealed partial record WalkAnswer(HttpStatusCode Status, string Location, string Content)
{
    /// <summary>Whether it lets in.</summary>
    public bool IsRefused =>
        Status is HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden or HttpStatusCode.NotFound || SendsToSignIn || IsRefusedOnTheList;

    /// <summary>Whether it sends to the list and says there that the record is not there.</summary>
    public bool IsRefusedOnTheList => Location.Contains("refused=not-found", StringComparison.Ordinal);

    /// <summary>Whether it asks to sign in.</summary>
    public bool SendsToSignIn => Status != HttpStatusCode.OK && Location.Contains("/sign-in", StringComparison.Ordinal);

    public static async Task<WalkAnswer> ReadAsync(HttpResponseMessage answer, string id)
    {
        string location = answer.Headers.Location is { } to ? (to.IsAbsoluteUri ? to.PathAndQuery : to.OriginalString) : "";
        string content = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());
        return new WalkAnswer(answer.StatusCode, WithoutId(location, id), Chance().Replace(WithoutId(content, id), ""));
    }

    private static string WithoutId(string text, string id) =>
        id.Length == 0 ? text : text.Replace(id, "ID", StringComparison.OrdinalIgnoreCase);

    // Tokens of forms, and what the framework seals for the live connection.
    [GeneratedRegex("value=\"CfDJ8[^\"]*\"|<!--Blazor[^>]*-->", RegexOptions.None, 10_000)]
    private static partial Regex Chance();
}
