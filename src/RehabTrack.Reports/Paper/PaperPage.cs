namespace RehabTrack.Reports.Paper;

/// <summary>What stands on one page, in the order in which it is read.</summary>
internal sealed class PaperPage
{
    public List<PaperWords> Words { get; } = [];

    public List<PaperRule> Rules { get; } = [];
}
