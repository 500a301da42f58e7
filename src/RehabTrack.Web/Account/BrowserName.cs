namespace RehabTrack.Web.Account;

/// <summary>What a browser calls itself, shortened so that its owner knows it again among the others.</summary>
public static class BrowserName
{
    // In this order: most browsers name the older ones that they want to be taken for.
    private static readonly (string Word, string Name)[] Programs =
    [
        ("Edg", "Edge"),
        ("OPR/", "Opera"),
        ("Firefox/", "Firefox"),
        ("FxiOS/", "Firefox"),
        ("Chrome/", "Chrome"),
        ("CriOS/", "Chrome"),
        ("Safari/", "Safari"),
    ];

    private static readonly (string Word, string Name)[] Machines =
    [
        ("Android", "Android"),
        ("iPhone", "iPhone"),
        ("iPad", "iPad"),
        ("Windows", "Windows"),
        ("Macintosh", "Mac"),
        ("Linux", "Linux"),
    ];

    /// <summary>As "Firefox, Android"; the text itself when nothing in it is known.</summary>
    public static string Of(string? userAgent)
    {
        string text = userAgent ?? "";
        string?[] known = [NameIn(text, Programs), NameIn(text, Machines)];
        return known.All(name => name is null) ? text : string.Join(", ", known.OfType<string>());
    }

    private static string? NameIn(string text, (string Word, string Name)[] names) =>
        Array.Find(names, name => text.Contains(name.Word, StringComparison.Ordinal)).Name;
}
