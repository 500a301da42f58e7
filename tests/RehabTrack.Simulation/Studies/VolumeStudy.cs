using System.Collections.Concurrent;
using System.Globalization;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Simulation.Cases;

namespace RehabTrack.Simulation.Studies;

/// <summary>
/// Why a volume is summed over linked positions and a missed level is filled from its history: the same readings, taken otherwise.
/// </summary>
public static class VolumeStudy
{
    private const int Looks = 5;

    /// <summary>How far volumes of a lesion that stays scatter, and by how much a volume with a missed level is off.</summary>
    public static IEnumerable<StudyRow> Run(int cases) =>
        ((double[])[0, 0.05]).SelectMany(missed => Scatter(cases, missed)).Concat(Filling(cases));

    /// <summary>SD of the log volume of one lesion that stays, from one examination to the next: summed over that day's tape, and as the engine does.</summary>
    public static IEnumerable<StudyRow> Scatter(int cases, double missed)
    {
        ConcurrentDictionary<int, (double OnTape, double Linked)> squares = [];
        Parallel.For(
            0,
            cases,
            number =>
            {
                CaseCourse course = new SimulatedLesion(80_000_000 + number, ReadingHabit.OnTheTape(missed)).Course(Looks, _ => 1);
                CaseAnalysis analysis = CaseAnalyser.Analyse(course, [], new AnalysisSettings(), course.Examinations[^1].Date);
                double[] linked = [.. analysis.Burdens.Select(burden => burden.Volume?.Value ?? double.NaN)];
                squares[number] = (MeanSquare([.. course.Examinations.Select(OnTheTape)]), MeanSquare(linked));
            }
        );
        (double OnTape, double Linked)[] known = [.. squares.Values.Where(pair => double.IsFinite(pair.OnTape + pair.Linked))];
        string regime = string.Create(CultureInfo.InvariantCulture, $"volume, no change, {100 * missed} % missed");
        yield return new StudyRow(
            regime,
            "SD of log volume on that day's tape",
            null,
            Math.Sqrt(known.Average(pair => pair.OnTape)),
            known.Length
        );
        yield return new StudyRow(
            regime,
            "SD of log volume over linked positions",
            null,
            Math.Sqrt(known.Average(pair => pair.Linked)),
            known.Length
        );
    }

    /// <summary>A lesion that heals, true links, one level left out at the fourth examination: the volume over that with all levels, less 1.</summary>
    public static IEnumerable<StudyRow> Filling(int cases)
    {
        foreach ((string level, int[] places) in ((string, int[])[])[("any inner level", [1, 2, 3, 4]), ("the worst level", [2])])
        {
            Filled[] all = new Filled[cases];
            Parallel.For(0, cases, number => all[number] = Without(number, places[number % places.Length]));
            string regime = $"volume, {level} missed at the fourth examination";
            double whole = all.Sum(one => one.Whole);
            yield return new StudyRow(
                regime,
                "bias, filled from its neighbours",
                null,
                (all.Sum(one => one.Neighbours) / whole) - 1,
                cases
            );
            yield return new StudyRow(regime, "bias, filled from its history", null, (all.Sum(one => one.History) / whole) - 1, cases);
        }
    }

    private static Filled Without(int number, int place)
    {
        const int look = 3;
        SimulatedLesion lesion = new(90_000_000 + number, new ReadingHabit());
        CaseCourse whole = LesionStories.Healing(lesion);
        Examination fourth = whole.Examinations[look];
        Examination without = fourth with { Readings = [.. fourth.Readings.Where(reading => SimulatedLesion.PlaceOf(reading) != place)] };
        CaseCourse course = whole with
        {
            Examinations = [.. whole.Examinations.Select(examination => examination == fourth ? without : examination)],
        };
        CaseAnalysis analysis = CaseAnalyser.AnalyseLinked(
            course,
            SimulatedLesion.TrueLinks(course),
            new AnalysisSettings(),
            course.Examinations[^1].Date
        );
        // Without a tape error the levels stand where the places are, and leaving one out is filling it from its neighbours.
        return new Filled(OnTheTape(fourth), OnTheTape(without), analysis.Burdens[look].Volume!.Value.Value);
    }

    private readonly record struct Filled(double Whole, double Neighbours, double History);

    /// <summary>Trapezoids over the levels as that day's tape gave them.</summary>
    private static double OnTheTape(Examination examination)
    {
        (double Level, double Area)[] read =
        [
            .. examination
                .Readings.Select(reading => (reading.Level.Position.Value, reading.LesionArea.Area.Value))
                .OrderBy(pair => pair.Item1),
        ];
        return read.Zip(read.Skip(1), (above, below) => (below.Level - above.Level) * (above.Area + below.Area) / 2).Sum();
    }

    // Of one size measured twice: half the mean square of the differences.
    private static double MeanSquare(double[] volumes) =>
        volumes.Zip(volumes.Skip(1), (one, next) => 0.5 * Math.Pow(Math.Log(next / one), 2)).Average();
}
