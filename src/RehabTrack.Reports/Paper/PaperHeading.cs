namespace RehabTrack.Reports.Paper;

/// <summary>A heading; it never stands alone at the foot of a page.</summary>
/// <param name="Text">The words.</param>
/// <param name="Rank">1 for what stands over the whole sheet, 2 for a section, 3 for a part of one.</param>
public sealed record PaperHeading(string Text, int Rank) : PaperBlock;
