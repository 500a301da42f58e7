namespace RehabTrack.Reports.Paper;

/// <summary>A paragraph; ends of lines in it are kept.</summary>
/// <param name="Text">The words.</param>
/// <param name="Tone">How they are said.</param>
/// <param name="KeepsNext">Whether it is said of what follows, and stands on one page with its beginning.</param>
public sealed record PaperText(string Text, PaperTone Tone = PaperTone.Plain, bool KeepsNext = false) : PaperBlock;
