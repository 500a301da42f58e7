using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Rechecks.Linking;

/// <summary>Finds the same place again at every examination.</summary>
public static class LevelLinker
{
    /// <summary>
    /// Links the places of a case into tracks: every place stands on exactly one track, a track holds at most one place an examination,
    /// the order along a path never swaps, paths never mix. Examinations are aligned one by one with the tracks found so far, then each
    /// anew with the tracks of the others, until nothing changes. A pinned pair always shares a track, a broken pair never does.
    /// </summary>
    /// <param name="examinations">The examinations, in any order, with unique ids; those without readings only get a shift of 0.</param>
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
        return new CourseLinker(CourseReader.Read(examinations, constraints, settings), settings).Run();
    }
}
