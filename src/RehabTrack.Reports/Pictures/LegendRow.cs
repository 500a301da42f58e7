namespace RehabTrack.Reports.Pictures;

/// <summary>Places the entries of a legend one beside the other, and breaks the row where the drawing ends.</summary>
/// <param name="width">The drawing's width.</param>
/// <param name="size">Size of the words.</param>
/// <param name="sample">Room for the mark before its words.</param>
/// <param name="y">The line of the first row.</param>
internal sealed class LegendRow(double width, double size, double sample, double y)
{
    private const double Margin = 4;
    private const double Gap = 18;
    private double _x = Margin;

    /// <summary>The line of the last row.</summary>
    public double Y { get; private set; } = y;

    /// <summary>Whether nothing was placed yet.</summary>
    public bool IsEmpty { get; private set; } = true;

    /// <summary>Where the mark of the next entry begins; its words begin <c>sample</c> further right.</summary>
    public (double X, double Y) Next(string text)
    {
        double whole = sample + Svg.WidthOf(text, size);
        if (!IsEmpty && _x + whole > width)
        {
            _x = Margin;
            Y += size + 8;
        }

        IsEmpty = false;
        (double X, double Y) place = (_x, Y);
        _x += whole + Gap;
        return place;
    }
}
