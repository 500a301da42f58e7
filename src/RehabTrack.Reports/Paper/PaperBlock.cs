namespace RehabTrack.Reports.Paper;

/// <summary>A part of a sheet of paper, which stands below the part before it.</summary>
public abstract record PaperBlock;
