using System.Globalization;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>Numbers of the grid: read with comma or point, written with a point and no more decimals than they have.</summary>
public static class EntryFigures
{
    /// <summary>The number, or null when the text is none.</summary>
    public static double? Number(string text) => DecimalText.TryRead(text, out double value, out _) ? value : null;

    /// <summary>The number as the grid shows it.</summary>
    public static string Write(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
