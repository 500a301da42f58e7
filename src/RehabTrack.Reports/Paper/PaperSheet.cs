namespace RehabTrack.Reports.Paper;

/// <summary>What shall stand on paper, before anybody knows how it falls on pages.</summary>
public sealed record PaperSheet
{
    /// <summary>What the file is called where files are listed by their own title.</summary>
    public required string Title { get; init; }

    /// <summary>Who speaks in it.</summary>
    public required string Author { get; init; }

    /// <summary>What stands at the foot of each page, so that one that got lost can be told; one line, cut short where it is longer.</summary>
    public required string Foot { get; init; }

    /// <summary>What stands on it, from top to bottom.</summary>
    public required IReadOnlyList<PaperBlock> Blocks { get; init; }
}
