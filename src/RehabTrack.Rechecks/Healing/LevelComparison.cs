using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Rechecks.Healing;

/// <summary>
/// Compares all places that two examinations both read. Each size is judged over all places together by the step-down rule of Holm
/// (1979, Scand J Stat 6:65), on probabilities that already count how often one looked: where no place changed, any of them is called
/// changed in at most 5 % of examinations, however much their errors hang together. A caution is no claim and is not held to it.
/// </summary>
public static class LevelComparison
{
    /// <summary>The overall error rate that a claim is held to, size by size.</summary>
    public const double ErrorRate = 0.05;

    /// <summary>
    /// The sizes that both dates have, place by place in the order given, each in the order of <see cref="MeasuredSize"/>. The smallest
    /// detectable change of a place is that of its rank: with m places, the r-th largest change must be exceeded by chance with a
    /// probability of at most 5 %/(m − r + 1); every place after the first that fails is held to the one that failed.
    /// </summary>
    /// <param name="places">The same place at the earlier and at the later date; may be empty.</param>
    /// <param name="settings">The error of measurement.</param>
    /// <param name="limb">The limb.</param>
    /// <param name="looks">How the two dates were chosen.</param>
    public static IReadOnlyList<IReadOnlyList<SizeChange>> Between(
        IReadOnlyList<(Place Before, Place Now)> places,
        MeasurementErrorSettings settings,
        Limb limb,
        Looks looks
    )
    {
        ArgumentNullException.ThrowIfNull(places);
        ArgumentNullException.ThrowIfNull(settings);
        List<(int Place, SizeDifference Difference)> all = [];
        foreach ((int index, (Place before, Place now)) in places.Index())
        {
            all.AddRange(PlaceComparison.Differences(before, now, settings, limb).Select(difference => (index, difference)));
        }

        List<SizeChange>[] changes = [.. places.Select(_ => new List<SizeChange>())];
        foreach (var size in all.GroupBy(one => one.Difference.Size).OrderBy(size => size.Key))
        {
            (int Place, SizeDifference Difference)[] levels = [.. size];
            IReadOnlyList<SizeChange> judged = Judge([.. levels.Select(level => level.Difference)], looks);
            foreach ((int index, SizeChange change) in judged.Index())
            {
                changes[levels[index].Place].Add(change);
            }
        }

        return changes;
    }

    private static SizeChange[] Judge(SizeDifference[] levels, Looks looks)
    {
        IReadOnlyList<double> adjusted = Holm.Adjust([.. levels.Select(level => looks.Probability(level.Deviations))]);
        int[] order = [.. Enumerable.Range(0, levels.Length).OrderByDescending(index => Math.Abs(levels[index].Deviations))];
        SizeChange[] judged = new SizeChange[levels.Length];
        bool failed = false;
        double factor = 0;
        foreach ((int rank, int index) in order.Index())
        {
            if (!failed)
            {
                factor = looks.Factor(ErrorRate / (levels.Length - rank));
            }

            judged[index] = levels[index].Against(factor, adjusted[index]);
            failed |= !judged[index].IsDetectable;
        }

        return judged;
    }
}
