using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Exams;

/// <summary>What is known of the lesion area at a level; the default is <see cref="Unknown"/>.</summary>
public readonly record struct LesionArea
{
    private LesionArea(LesionAreaKind kind, SquareCentimetres area)
    {
        Kind = kind;
        Area = area;
    }

    /// <summary>Not recorded.</summary>
    public static LesionArea Unknown => default;

    /// <summary>Present, cannot be outlined.</summary>
    public static LesionArea Diffuse => new(LesionAreaKind.Diffuse, default);

    /// <summary>Looked, none seen: 0 cm².</summary>
    public static LesionArea None => new(LesionAreaKind.Measured, default);

    /// <summary>What is known.</summary>
    public LesionAreaKind Kind { get; }

    /// <summary>The area in cm²; meaningful only when <see cref="Kind"/> is <see cref="LesionAreaKind.Measured"/>.</summary>
    public SquareCentimetres Area { get; }

    /// <summary>The area, or null when it is unknown or diffuse.</summary>
    public SquareCentimetres? MeasuredArea => Kind == LesionAreaKind.Measured ? Area : null;

    /// <summary>A traced area.</summary>
    /// <param name="area">At least 0 cm².</param>
    /// <exception cref="ArgumentOutOfRangeException">The area is negative or not finite.</exception>
    public static LesionArea Measured(SquareCentimetres area)
    {
        if (!double.IsFinite(area.Value) || area.Value < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(area), area, "A lesion area is at least 0 cm².");
        }

        return new(LesionAreaKind.Measured, area);
    }
}
