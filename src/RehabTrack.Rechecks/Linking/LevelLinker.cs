using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Linking;

/// <summary>Finds the same place again at every examination.</summary>
public static class LevelLinker
{
    /// <summary>
    /// Links the places of a case into tracks: every place stands on exactly one track, a track holds at most one place an examination,
    /// the order along a path never swaps, paths never mix. Examinations are aligned one by one with the tracks found so far, then each
    /// anew with the tracks of the others, until nothing changes. A pinned pair always shares a track, a broken pair never does.
    /// </summary>
    /// <param name="examinations">The examinations, in any order, with unique ids, levels of all by tape from one landmark or of all by one zone scheme; those without readings only
    /// get a shift of 0.</param>
    /// <param name="constraints">
    /// Links that persons pinned or broke, in the order they were said: one that contradicts an earlier one is left out and named in the
    /// answer.
    /// </param>
    /// <param name="settings">Parameters of the model.</param>
    /// <returns>The tracks; deterministic, and the order of examinations and readings changes nothing.</returns>
    /// <remarks>
    /// A pair hidden Markov model (Durbin, Eddy, Krogh and Mitchison 1998) and its maximum expected accuracy, as docs/methods.md
    /// describes.
    /// </remarks>
    public static LinkedCourse Link(
        IReadOnlyList<Examination> examinations,
        IReadOnlyList<LinkConstraint> constraints,
        LinkingSettings settings
    )
    {
        ArgumentNullException.ThrowIfNull(examinations);
        ArgumentNullException.ThrowIfNull(constraints);
        ArgumentNullException.ThrowIfNull(settings);
        return Link(CourseReader.Read(examinations, CommonTape.None, constraints, settings), settings);
    }

    /// <summary>
    /// Links the places of a case whose examinations may start their tapes at different landmarks, or name zones, on the tape of
    /// <see cref="CommonTape"/>. An examination that no measured distance leads to, or whose levels are told in another way, is linked with
    /// none: each of its places is a track of its own, and its id is told.
    /// </summary>
    /// <param name="course">The case.</param>
    /// <param name="constraints">As above; one with a place of an examination that stands apart is left out.</param>
    /// <param name="settings">Parameters of the model.</param>
    public static LinkedCourse Link(CaseCourse course, IReadOnlyList<LinkConstraint> constraints, LinkingSettings settings)
    {
        ArgumentNullException.ThrowIfNull(course);
        ArgumentNullException.ThrowIfNull(constraints);
        ArgumentNullException.ThrowIfNull(settings);
        IReadOnlyDictionary<string, Centimetres?> offsets = CommonTape.OffsetsOf(course);
        Examination[] apart = [.. course.Examinations.Where(examination => offsets[examination.Id] is null)];
        Examination[] common = apart.Length == 0 ? [.. course.Examinations] : [.. course.Examinations.Except(apart)];
        LinkedCourse linked = Link(CourseReader.Read(common, offsets, constraints, settings), settings);
        return apart.Length == 0 ? linked : StandingApart.Add(linked, apart, course.Examinations);
    }

    private static LinkedCourse Link(CourseState state, LinkingSettings settings)
    {
        using CourseLinker linker = new(state, settings);
        return linker.Run();
    }
}
