namespace RehabTrack.Reports.Paper;

/// <summary>A filled rule at its place; all in points from the left and the top of the page.</summary>
internal readonly record struct PaperRule(double Left, double Top, double Width, double Height, PaperColour Colour);
