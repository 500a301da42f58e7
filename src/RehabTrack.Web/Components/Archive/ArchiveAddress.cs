using System.Globalization;
using RehabTrack.Records.Archive;

namespace RehabTrack.Web.Components.Archive;

/// <summary>Addresses of the page of what was put away: which kind, of which horse, which page.</summary>
public static class ArchiveAddress
{
    /// <summary>The page's path.</summary>
    public const string Path = "/put-away";

    private static readonly Dictionary<ArchivedKind, string> Kinds = new()
    {
        [ArchivedKind.Horse] = "horses",
        [ArchivedKind.Person] = "people",
        [ArchivedKind.Case] = "cases",
        [ArchivedKind.Draft] = "drafts",
        [ArchivedKind.Care] = "care",
        [ArchivedKind.Cover] = "cover",
        [ArchivedKind.Repeats] = "repeats",
    };

    /// <summary>The address of a list.</summary>
    public static string Of(ArchivedKind kind, Guid? horseId = null, int page = 1)
    {
        string address = $"{Path}?of={Kinds[kind]}";
        address += horseId is { } horse ? $"&horse={horse}" : "";
        return address + (page > 1 ? string.Create(CultureInfo.InvariantCulture, $"&page={page}") : "");
    }

    /// <summary>The kind that an address names; null when it names none.</summary>
    public static ArchivedKind? KindOf(string? text) =>
        Kinds.Where(kind => kind.Value == text).Select(kind => (ArchivedKind?)kind.Key).FirstOrDefault();
}
