using System.Globalization;

namespace RehabTrack.Rechecks.Quantities;

/// <summary>A length in cm: a level on the tape, a thickness, a width, a lesion length.</summary>
/// <param name="Value">The amount in cm; the default is 0. Finite by convention; limits of plausibility stand in <c>shared/limits.json</c>.</param>
public readonly record struct Centimetres(double Value) : IComparable<Centimetres>
{
    /// <summary>Adds two amounts of the same unit.</summary>
    public static Centimetres operator +(Centimetres left, Centimetres right) => new(left.Value + right.Value);

    /// <summary>Subtracts two amounts of the same unit.</summary>
    public static Centimetres operator -(Centimetres left, Centimetres right) => new(left.Value - right.Value);

    /// <summary>Scales an amount.</summary>
    public static Centimetres operator *(double factor, Centimetres amount) => new(factor * amount.Value);

    /// <summary>The ratio of two amounts of the same unit.</summary>
    public static double operator /(Centimetres left, Centimetres right) => left.Value / right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator <(Centimetres left, Centimetres right) => left.Value < right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator >(Centimetres left, Centimetres right) => left.Value > right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator <=(Centimetres left, Centimetres right) => left.Value <= right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator >=(Centimetres left, Centimetres right) => left.Value >= right.Value;

    /// <inheritdoc />
    public int CompareTo(Centimetres other) => Value.CompareTo(other.Value);

    /// <summary>The amount with its unit in invariant notation, for logs and tests; pages write amounts through Wording.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value} cm");
}
