using System.Globalization;
using RehabTrack.Web.Components.Forms;

namespace RehabTrack.Web.Features.People;

/// <summary>Languages a person can be written to in; each is named in itself.</summary>
public static class Languages
{
    private static readonly string[] Codes = ["en", "de", "fr", "nl", "es", "it", "pt", "sv", "da", "nb", "pl", "cs"];

    /// <summary>The choices, English first.</summary>
    public static IReadOnlyList<Choice<string>> Choices { get; } =
    [.. Codes.Select(code => new Choice<string>(code, CultureInfo.GetCultureInfo(code).NativeName))];
}
