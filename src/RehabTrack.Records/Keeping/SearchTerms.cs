namespace RehabTrack.Records.Keeping;

/// <summary>Takes a search apart: each term must be found.</summary>
internal static class SearchTerms
{
    private const int Most = 6;

    public static IReadOnlyList<string> Of(string? query) =>
        string.IsNullOrWhiteSpace(query)
            ? []
            : [.. Folded.Of(query).Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Take(Most)];
}
