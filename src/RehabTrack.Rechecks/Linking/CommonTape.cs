using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Linking;

/// <summary>
/// One landmark for the tapes of a case. A tape that starts at another landmark meets the others only through a distance that was
/// measured on that horse; without one it stands apart. Zones meet only zones of their own scheme.
/// </summary>
public static class CommonTape
{
    /// <summary>
    /// What to add to each examination's levels, cm, so that all start at one landmark: the one that most examinations meet at (the
    /// case's on a tie, then the one of the earliest examination). Null where no distance leads there, and between a tape and zones or two
    /// schemes: that examination is compared with none.
    /// </summary>
    /// <param name="course">The case.</param>
    /// <returns>By examination id.</returns>
    public static IReadOnlyDictionary<string, Centimetres?> OffsetsOf(CaseCourse course)
    {
        ArgumentNullException.ThrowIfNull(course);
        Start[] tried =
        [
            new(course.Landmark, null),
            .. course
                .Examinations.OrderBy(examination => examination.Date)
                .ThenBy(examination => examination.Id, StringComparer.Ordinal)
                .Select(examination => StartOf(examination, course)),
        ];
        return tried
            .Distinct()
            .Select(common => OffsetsTo(course, common))
            .MaxBy(offsets => offsets.Values.Count(offset => offset is not null))!;
    }

    /// <summary>No offsets: every tape starts at the one landmark.</summary>
    internal static IReadOnlyDictionary<string, Centimetres?> None { get; } = new Dictionary<string, Centimetres?>();

    /// <summary>From where and how the levels of an examination are told.</summary>
    private readonly record struct Start(Landmark? Landmark, ZoneScheme? Zones);

    private static Start StartOf(Examination examination, CaseCourse course) =>
        examination.Zones is { } zones
            ? new Start(ZoneSchemes.LandmarkOf(zones), zones)
            : new Start(examination.Landmark ?? course.Landmark, null);

    private static Dictionary<string, Centimetres?> OffsetsTo(CaseCourse course, Start common) =>
        course.Examinations.ToDictionary(
            examination => examination.Id,
            examination =>
                StartOf(examination, course) is var start && start.Zones == common.Zones
                    ? Offset(start.Landmark, common.Landmark, course.LandmarkDistances)
                    : null,
            StringComparer.Ordinal
        );

    // Landmarks and distances as roads: the shortest way in roads, so that what was measured directly is not summed from parts.
    private static Centimetres? Offset(Landmark? from, Landmark? to, IReadOnlyList<LandmarkDistance> distances)
    {
        if (from == to)
        {
            return new Centimetres(0);
        }

        // A landmark that nobody wrote down is no landmark that a distance could lead to.
        if (from is not { } start || to is not { } goal)
        {
            return null;
        }

        Dictionary<Landmark, Centimetres> reached = new() { [start] = new Centimetres(0) };
        Queue<Landmark> open = new([start]);
        while (open.TryDequeue(out Landmark here) && here != goal)
        {
            foreach (LandmarkDistance road in distances)
            {
                // A level is smaller when counted from a landmark further down.
                (Landmark? next, Centimetres step) =
                    road.Proximal == here ? ((Landmark?)road.Distal, new Centimetres(-road.Distance.Value))
                    : road.Distal == here ? (road.Proximal, road.Distance)
                    : (null, default);
                if (next is { } there && reached.TryAdd(there, reached[here] + step))
                {
                    open.Enqueue(there);
                }
            }
        }

        return reached.TryGetValue(goal, out Centimetres offset) ? offset : null;
    }
}
