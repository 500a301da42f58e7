namespace RehabTrack.Reports.Healing;

/// <summary>The time axis of a chart. Whatever is drawn under the chart on the same axis uses the same one.</summary>
/// <param name="From">The date at the left end.</param>
/// <param name="To">The date at the right end, later than the first.</param>
/// <param name="Left">Where the first date stands, in units of the drawing.</param>
/// <param name="Right">Where the last date stands, in units of the drawing.</param>
public sealed record TimeAxis(DateOnly From, DateOnly To, double Left, double Right)
{
    /// <summary>Where a date stands; a date outside the axis stands outside the drawing.</summary>
    public double XOf(DateOnly date) => Left + ((Right - Left) * (date.DayNumber - From.DayNumber) / (To.DayNumber - From.DayNumber));
}
