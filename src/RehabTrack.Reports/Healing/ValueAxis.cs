namespace RehabTrack.Reports.Healing;

/// <summary>The scale of values, with round steps.</summary>
internal sealed record ValueAxis(double From, double To, double Step, double Top, double Bottom)
{
    /// <summary>A scale that holds both values. It begins at 0 where a length from 0 means something.</summary>
    public static ValueAxis Holding(double lowest, double highest, bool fromZero, double top, double bottom, int steps)
    {
        double from = fromZero ? 0 : lowest;
        double span = highest > from ? highest - from : 1;
        double rough = span / steps;
        double power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        double step = power * new[] { 1, 2, 2.5, 5, 10 }.First(round => round * power >= rough * 0.999);
        double start = Math.Floor((from / step) + 1e-9) * step;
        return new ValueAxis(start, Math.Max(highest, start + step), step, top, bottom);
    }

    public IEnumerable<double> Ticks
    {
        get
        {
            for (int i = 0; From + (i * Step) <= To + (Step * 1e-9); i++)
            {
                yield return From + (i * Step);
            }
        }
    }

    /// <summary>The .NET format that writes the steps without loss.</summary>
    public string Format =>
        Step >= 1 ? "0.#"
        : Step >= 0.1 ? "0.0#"
        : "0.00#";

    public double YOf(double value) => Bottom - ((Bottom - Top) * (Math.Clamp(value, From, To) - From) / (To - From));
}
