namespace RehabTrack.Reports.Paper;

/// <summary>A paragraph; ends of lines in it are kept.</summary>
/// <param name="Text">The words.</param>
/// <param name="Tone">How they are said.</param>
public sealed record PaperText(string Text, PaperTone Tone = PaperTone.Plain) : PaperBlock;
