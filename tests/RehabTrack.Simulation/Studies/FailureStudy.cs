using System.Globalization;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Simulation.Cases;

namespace RehabTrack.Simulation.Studies;

/// <summary>Where the verdict fails, and how often: figures without bars (docs/methods.md, "Where it fails").</summary>
public static class FailureStudy
{
    private const int Looks = 5;
    private const int WrongLook = 3;
    private static readonly AnalysisSettings Usual = new();

    /// <summary>Slow healers, a floor, slow growth, an error set too small or too large, links one level off, and a laxer line of healing.</summary>
    public static IEnumerable<StudyRow> Run(int cases) =>
        SlowHealers(cases)
            .Concat(Floors(cases))
            .Concat(SlowGrowth(cases))
            .Concat(WrongErrors(cases))
            .Concat(WrongLinks(cases))
            .Concat(HealingLines(cases));

    /// <summary>A lesion that halves ever more slowly.</summary>
    public static IEnumerable<StudyRow> SlowHealers(int cases) =>
        from halfLife in (int[])[160, 200, 250, 300, 400]
        let looks = True(11, cases, new ReadingHabit(), lesion => lesion.Course(Looks, day => Math.Pow(2, -day / halfLife)))
        select Row($"true links, half-life {halfLife} d", "no progress said within five looks", looks, Says(Verdict.Stalled));

    /// <summary>A lesion that stops at a floor above its target.</summary>
    public static IEnumerable<StudyRow> Floors(int cases)
    {
        Trend[][] looks = True(12, cases, new ReadingHabit(), Stopping);
        yield return Row(
            "true links, half-life 60 d to a floor of 15 to 25 %",
            "no progress said within seven looks",
            looks,
            Says(Verdict.Stalled)
        );

        static CaseCourse Stopping(SimulatedLesion lesion)
        {
            double floor = 0.15 + (0.1 * lesion.Floor() / 0.08);
            return lesion.Course(7, day => floor + ((1 - floor) * Math.Pow(2, -day / 60)));
        }
    }

    /// <summary>A lesion that heals until the second examination, then grows by 15 log-% in 60 days.</summary>
    public static IEnumerable<StudyRow> SlowGrowth(int cases)
    {
        Trend[][] looks = True(13, cases, new ReadingHabit(), lesion => LesionStories.Growing(lesion, Math.Exp(0.15)));
        yield return Row("true links, growth of 15 log-% in 60 d", "growth named by the second examination", looks, Named(2..4));
        yield return Row("true links, growth of 15 log-% in 60 d", "growth named by the third", looks, Named(2..5));
    }

    /// <summary>No change, measured with an error that is another than the one assumed.</summary>
    public static IEnumerable<StudyRow> WrongErrors(int cases)
    {
        foreach (double factor in (double[])[0.67, 1, 1.5, 2])
        {
            Trend[][] looks = True(14, cases, new ReadingHabit { ErrorFactor = factor }, LesionStories.Flat);
            string regime = $"true links, no change, error × {factor.ToString(CultureInfo.InvariantCulture)}";
            yield return Row(regime, "worsening said", looks, Says(Verdict.Worsening));
            yield return Row(regime, "healing, slow healing or target said", looks, Says(Healing));
        }
    }

    /// <summary>The fourth examination linked one level too low throughout, and a linker that has nothing but the tape to go by.</summary>
    public static IEnumerable<StudyRow> WrongLinks(int cases)
    {
        ReadingHabit alike = ReadingHabit.OnTheTape(0.10) with { PlaceLogSpread = 0 };
        (string Name, ReadingHabit Habit, Func<CaseCourse, LinkedCourse>? Links)[] regimes =
        [
            ("true links", new ReadingHabit(), SimulatedLesion.TrueLinks),
            ("fourth examination one level off", new ReadingHabit(), course => SimulatedLesion.LinksOneOff(course, WrongLook)),
            ("linker, 10 % missed, ligament alike everywhere", alike, null),
        ];
        foreach ((string name, ReadingHabit habit, Func<CaseCourse, LinkedCourse>? links) in regimes)
        {
            Trend[][] At(int story, Func<SimulatedLesion, CaseCourse> tell) =>
                VerdictStudy.Looks(story, cases, habit, tell, links, Usual, WrongLook);
            Trend[][] flat = At(15, LesionStories.Flat);
            yield return Row($"{name}, at the fourth", "no change: worsening said", flat, Says(Verdict.Worsening));
            yield return Row($"{name}, at the fourth", "no change: healing, slow healing or target said", flat, Says(Healing));
            Trend[][] healing = At(16, LesionStories.Healing);
            yield return Row(
                $"{name}, at the fourth",
                "healing: no progress, healing slowly or worsening said",
                healing,
                Says(Verdict.Stalled, Verdict.HealingSlowly, Verdict.Worsening)
            );
            Trend[][] growing = At(17, LesionStories.Worsening);
            yield return Row($"{name}, at the fourth", "growth of 22 %: worsening said", growing, Says(Verdict.Worsening));
        }
    }

    /// <summary>
    /// No change, seven examinations, so five windows of three: how often healing is said once, by the line at which it is said.
    /// docs/methods/healing.md: about 23 % at 1.645, about 5 % at 2.326.
    /// </summary>
    public static IEnumerable<StudyRow> HealingLines(int cases) =>
        from line in (double[])[1.645, 2.326]
        let settings = new AnalysisSettings { Trend = new TrendSettings { HealingZ = line } }
        let looks = VerdictStudy.Looks(18, cases, new ReadingHabit(), Flat, SimulatedLesion.TrueLinks, settings)
        select Row(
            $"true links, no change, five windows, healing from {line.ToString(CultureInfo.InvariantCulture)} on",
            "healing or slow healing said",
            looks,
            Says(Verdict.Healing, Verdict.HealingSlowly)
        );

    private static readonly Verdict[] Healing = [Verdict.Healing, Verdict.HealingSlowly, Verdict.AtTarget];

    private static CaseCourse Flat(SimulatedLesion lesion) => lesion.Course(7, _ => 1);

    private static Trend[][] True(int story, int cases, ReadingHabit habit, Func<SimulatedLesion, CaseCourse> tell) =>
        VerdictStudy.Looks(story, cases, habit, tell, SimulatedLesion.TrueLinks, Usual);

    private static StudyRow Row(string regime, string what, Trend[][] all, Func<Trend[], bool> said) =>
        new(regime, what, null, all.Count(said) / (double)all.Length, all.Length);

    private static Func<Trend[], bool> Says(params Verdict[] verdicts) => looks => looks.Any(VerdictStudy.Says(verdicts));

    private static Func<Trend[], bool> Named(Range looks) => all => all[looks].Any(VerdictStudy.Says(Verdict.Worsening));
}
