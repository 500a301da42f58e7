namespace RehabTrack.Reports.Paper;

/// <summary>How letters stand: size and distance of lines in points (1/72 inch).</summary>
internal readonly record struct PaperStyle(double SizePoints, double LinePoints, bool IsBold, PaperColour Colour)
{
    private const double Ascent = 0.85;

    /// <summary>From the top of a line to the foot of its letters, in points.</summary>
    public double Baseline => ((LinePoints - SizePoints) / 2) + (Ascent * SizePoints);
}
