using System.Globalization;

namespace RehabTrack.Rechecks.Quantities;

/// <summary>An area in cm²: of the ligament or of the lesion in short axis.</summary>
/// <param name="Value">The amount in cm²; the default is 0. Finite by convention; limits of plausibility stand in <c>shared/limits.json</c>.</param>
public readonly record struct SquareCentimetres(double Value) : IComparable<SquareCentimetres>
{
    /// <summary>Adds two amounts of the same unit.</summary>
    public static SquareCentimetres operator +(SquareCentimetres left, SquareCentimetres right) => new(left.Value + right.Value);

    /// <summary>Subtracts two amounts of the same unit.</summary>
    public static SquareCentimetres operator -(SquareCentimetres left, SquareCentimetres right) => new(left.Value - right.Value);

    /// <summary>Scales an amount.</summary>
    public static SquareCentimetres operator *(double factor, SquareCentimetres amount) => new(factor * amount.Value);

    /// <summary>The ratio of two amounts of the same unit.</summary>
    public static double operator /(SquareCentimetres left, SquareCentimetres right) => left.Value / right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator <(SquareCentimetres left, SquareCentimetres right) => left.Value < right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator >(SquareCentimetres left, SquareCentimetres right) => left.Value > right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator <=(SquareCentimetres left, SquareCentimetres right) => left.Value <= right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator >=(SquareCentimetres left, SquareCentimetres right) => left.Value >= right.Value;

    /// <inheritdoc />
    public int CompareTo(SquareCentimetres other) => Value.CompareTo(other.Value);

    /// <summary>The amount with its unit in invariant notation, for logs and tests; pages write amounts through Wording.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value} cm²");
}
