using System.Globalization;

namespace RehabTrack.Rechecks.Quantities;

/// <summary>A volume in cm³.</summary>
/// <param name="Value">The amount in cm³; the default is 0. Finite by convention; limits of plausibility stand in <c>shared/limits.json</c>.</param>
public readonly record struct CubicCentimetres(double Value) : IComparable<CubicCentimetres>
{
    /// <summary>Adds two amounts of the same unit.</summary>
    public static CubicCentimetres operator +(CubicCentimetres left, CubicCentimetres right) => new(left.Value + right.Value);

    /// <summary>Subtracts two amounts of the same unit.</summary>
    public static CubicCentimetres operator -(CubicCentimetres left, CubicCentimetres right) => new(left.Value - right.Value);

    /// <summary>Scales an amount.</summary>
    public static CubicCentimetres operator *(double factor, CubicCentimetres amount) => new(factor * amount.Value);

    /// <summary>The ratio of two amounts of the same unit.</summary>
    public static double operator /(CubicCentimetres left, CubicCentimetres right) => left.Value / right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator <(CubicCentimetres left, CubicCentimetres right) => left.Value < right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator >(CubicCentimetres left, CubicCentimetres right) => left.Value > right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator <=(CubicCentimetres left, CubicCentimetres right) => left.Value <= right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator >=(CubicCentimetres left, CubicCentimetres right) => left.Value >= right.Value;

    /// <inheritdoc />
    public int CompareTo(CubicCentimetres other) => Value.CompareTo(other.Value);

    /// <summary>The amount with its unit in invariant notation, for logs and tests; pages write amounts through Wording.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value} cm³");
}
