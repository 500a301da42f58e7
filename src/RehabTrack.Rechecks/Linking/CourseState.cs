using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Rechecks.Linking;

/// <summary>The tracks of a case while they are being found, with what is held of each examination.</summary>
internal sealed class CourseState
{
    public required IReadOnlyList<Examination> Examinations { get; init; }

    /// <summary>By examination and path, ordered by level.</summary>
    public required PlaceNode[][][] Places { get; init; }

    /// <summary>By path, ordered from proximal to distal.</summary>
    public required List<TrackColumn>[] Columns { get; init; }

    public required PinGroups Pins { get; init; }

    /// <summary>By path: usual distance between neighbouring levels, cm.</summary>
    public required double[] Spacing { get; init; }

    /// <summary>By examination: how much larger its tape reads than the common tape, cm.</summary>
    public required double[] Shift { get; init; }

    /// <summary>By path and examination: log of the lesion's common size, against the first examination.</summary>
    public required double[][] LesionSize { get; init; }

    /// <summary>By examination: log of the ligament's common size, against the first examination.</summary>
    public required double[] LigamentSize { get; init; }

    /// <summary>By examination: whether its places stand on columns.</summary>
    public required bool[] Placed { get; init; }

    /// <summary>The scheme when the levels are zones; null for tapes.</summary>
    public required ZoneScheme? Zones { get; init; }

    /// <summary>By examination: what was added to its levels so that they count from the common landmark, cm.</summary>
    public required double[] Offsets { get; init; }

    /// <summary>By kind and examination: the fixed point on that day's tape at the common landmark, cm; not a number where not seen.</summary>
    public required double[][] FixedPoints { get; init; }

    public int PathCount => Columns.Length;
}
