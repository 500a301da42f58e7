namespace RehabTrack.Reports.Paper;

/// <summary>A line of letters at its place; all in points from the left and the top of the page.</summary>
internal readonly record struct PaperWords(string Text, double Left, double Baseline, PaperStyle Style);
