using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Simulation.Cases;

namespace RehabTrack.Simulation.Studies;

/// <summary>How often any of six levels is called changed at a recheck although none did: with Holm's rule, and level by level without it.</summary>
public static class LevelClaimStudy
{
    private const int Looks = 2;
    private const double ErrorRate = 0.05;

    /// <summary>Two examinations of one lesion that stays, true links, size by size.</summary>
    public static IEnumerable<StudyRow> Run(int cases)
    {
        Count lesion = new();
        Count ligament = new();
        Parallel.For(0, cases, number => Look(number, lesion, ligament));
        yield return Row("lesion area of any of 6 unchanged levels called changed", lesion.Claimed);
        yield return Row("ligament area of any of 6 unchanged levels called changed", ligament.Claimed);
        yield return Row("the same lesion areas judged one by one", lesion.OneByOne) with
        {
            Bar = null,
        };

        StudyRow Row(string what, int found) =>
            new("levels together, no change", what, Bar.AtMost(ErrorRate), found / (double)cases, cases);
    }

    private static void Look(int number, Count lesion, Count ligament)
    {
        CaseCourse course = new SimulatedLesion(70_000_000 + number, new ReadingHabit()).Course(Looks, _ => 1);
        (Place Before, Place Now)[] levels =
        [
            .. SimulatedLesion.TrueLinks(course).Tracks.Select(track => (track.Steps[0].Place, track.Steps[1].Place)),
        ];
        SizeChange[] together =
        [
            .. LevelComparison
                .Between(levels, new MeasurementErrorSettings(), course.Limb, Rechecks.Healing.Looks.Once)
                .SelectMany(one => one),
        ];
        SizeChange[] oneByOne =
        [
            .. levels.SelectMany(level =>
                PlaceComparison.Between(level.Before, level.Now, new MeasurementErrorSettings(), course.Limb, ComparisonFactors.Single)
            ),
        ];
        lesion.Add(MeasuredSize.LesionArea, together, oneByOne);
        ligament.Add(MeasuredSize.LigamentArea, together, oneByOne);
    }

    private sealed class Count
    {
        private int _claimed;
        private int _oneByOne;

        public int Claimed => _claimed;

        public int OneByOne => _oneByOne;

        public void Add(MeasuredSize size, SizeChange[] together, SizeChange[] oneByOne)
        {
            if (together.Any(change => change.Size == size && change.IsDetectable))
            {
                Interlocked.Increment(ref _claimed);
            }

            if (oneByOne.Any(change => change.Size == size && change.IsDetectable))
            {
                Interlocked.Increment(ref _oneByOne);
            }
        }
    }
}
