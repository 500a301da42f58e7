using System.Globalization;

namespace RehabTrack.Rechecks.Quantities;

/// <summary>A share in percent: 25 means a quarter.</summary>
/// <param name="Value">The amount in %; the default is 0. Finite by convention; limits of plausibility stand in <c>shared/limits.json</c>.</param>
public readonly record struct Percent(double Value) : IComparable<Percent>
{
    /// <summary>Adds two amounts of the same unit.</summary>
    public static Percent operator +(Percent left, Percent right) => new(left.Value + right.Value);

    /// <summary>Subtracts two amounts of the same unit.</summary>
    public static Percent operator -(Percent left, Percent right) => new(left.Value - right.Value);

    /// <summary>Scales an amount.</summary>
    public static Percent operator *(double factor, Percent amount) => new(factor * amount.Value);

    /// <summary>The ratio of two amounts of the same unit.</summary>
    public static double operator /(Percent left, Percent right) => left.Value / right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator <(Percent left, Percent right) => left.Value < right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator >(Percent left, Percent right) => left.Value > right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator <=(Percent left, Percent right) => left.Value <= right.Value;

    /// <summary>Orders by amount.</summary>
    public static bool operator >=(Percent left, Percent right) => left.Value >= right.Value;

    /// <inheritdoc />
    public int CompareTo(Percent other) => Value.CompareTo(other.Value);

    /// <summary>The share of <paramref name="part"/> in <paramref name="whole"/>, in percent. The whole must be above 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The whole is not above 0.</exception>
    public static Percent Of(SquareCentimetres part, SquareCentimetres whole)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(whole.Value, 0, nameof(whole));
        return new(100 * part.Value / whole.Value);
    }

    /// <summary>The amount with its unit in invariant notation, for logs and tests; pages write amounts through Wording.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value} %");
}
