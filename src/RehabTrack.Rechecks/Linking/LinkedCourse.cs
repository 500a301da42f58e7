namespace RehabTrack.Rechecks.Linking;

/// <summary>The tracks of a case. Every place of every examination is on exactly one track.</summary>
/// <param name="Tracks">Ordered by path and consensus level; those of examinations that stand apart come last on their path.</param>
/// <param name="Shifts">One an examination, ordered by date and id.</param>
public sealed record LinkedCourse(IReadOnlyList<Track> Tracks, IReadOnlyList<ExaminationShift> Shifts)
{
    /// <summary>
    /// The words of persons that could not be followed, in the order given: of two that contradict each other the later is left out.
    /// </summary>
    public IReadOnlyList<LeftOutConstraint> LeftOut { get; init; } = [];

    /// <summary>
    /// Ids of examinations whose tape starts at another landmark that no measured distance leads to, or whose levels are told in another way
    /// than those of the others, by date: linked and compared with none.
    /// </summary>
    public IReadOnlyList<string> Apart { get; init; } = [];
}
