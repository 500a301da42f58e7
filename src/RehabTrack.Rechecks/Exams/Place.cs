using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Exams;

/// <summary>
/// All that one examination read at one level of one path: repeats and measurers are averaged, lesions share one ligament area and
/// their areas add up, both planes belong to it.
/// </summary>
public sealed record Place
{
    /// <summary>Names the place.</summary>
    public required PlaceKey Key { get; init; }

    /// <summary>The part, of the first reading by part.</summary>
    public required Part Part { get; init; }

    /// <summary>The readings at this place, ordered by lesion, plane, measurer, repeat and id.</summary>
    public required IReadOnlyList<Reading> Readings { get; init; }

    /// <summary>Mean ligament area, cm²; null when none was recorded.</summary>
    public required SquareCentimetres? LigamentArea { get; init; }

    /// <summary>
    /// Sum of the lesions' areas, each the mean of its tracings. Diffuse when any lesion here is diffuse; unknown when nothing was
    /// recorded, or any lesion named here has no area. A share of 0, and empty at a normal level of a triplet, count as 0.
    /// </summary>
    public required LesionArea LesionArea { get; init; }

    /// <summary>The lesions' share, %: of the areas where both are known, else as recorded; null when neither is known.</summary>
    public required Percent? LesionPercent { get; init; }

    /// <summary>Mean thickness in short axis, or in long axis where only that was recorded, cm.</summary>
    public required Centimetres? Thickness { get; init; }

    /// <summary>Mean width, cm.</summary>
    public required Centimetres? Width { get; init; }

    /// <summary>Mean ligament area of the other limb at this level, cm²; null when none was recorded.</summary>
    public required SquareCentimetres? OtherLimbLigamentArea { get; init; }

    /// <summary>Mean thickness of the other limb at this level, cm; null when none was recorded.</summary>
    public required Centimetres? OtherLimbThickness { get; init; }

    /// <summary>The worst echogenicity grade recorded here.</summary>
    public required Grade? Echogenicity { get; init; }

    /// <summary>The worst fibre-alignment grade recorded here.</summary>
    public required Grade? FibreAlignment { get; init; }

    /// <summary>The number of tracings behind the areas, at least 1.</summary>
    public required int Tracings { get; init; }

    /// <summary>The level on that day's tape, or the zone.</summary>
    public Level Level => Key.Level;

    /// <summary>Whether any reading here names this role.</summary>
    public bool HasRole(ReadingRole role) => Readings.Any(reading => reading.Role == role);

    /// <summary>
    /// Whether the place is abnormal: a lesion area or share above 0, a diffuse lesion, or the worst level of a triplet.
    /// </summary>
    public bool IsAbnormal =>
        LesionArea.Kind == LesionAreaKind.Diffuse
        || LesionArea.MeasuredArea?.Value > 0
        || LesionPercent?.Value > 0
        || (LesionArea.Kind == LesionAreaKind.Unknown && HasRole(ReadingRole.Worst));
}
