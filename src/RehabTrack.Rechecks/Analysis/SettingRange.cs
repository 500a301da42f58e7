namespace RehabTrack.Rechecks.Analysis;

/// <summary>Within which a setting of the analysis may be changed.</summary>
/// <param name="Name">Its group and name, as <c>trend.windowExaminations</c>.</param>
/// <param name="Lowest">The least value, in the unit of the setting.</param>
/// <param name="Highest">The greatest value, in the unit of the setting.</param>
/// <param name="IsWhole">Whether it must be a whole number.</param>
public sealed record SettingRange(string Name, double Lowest, double Highest, bool IsWhole)
{
    /// <summary>Whether a value may be set.</summary>
    /// <param name="value">The value, in the unit of the setting.</param>
    public bool Holds(double value) => value >= Lowest && value <= Highest && (!IsWhole || value == Math.Floor(value));
}
