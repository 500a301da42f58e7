using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Simulation.Cases;

namespace RehabTrack.Simulation.Studies;

/// <summary>What verdicts are said at each of five looks, with true links or through the linker.</summary>
public static class VerdictStudy
{
    /// <summary>Reads the same stories with true links, and through the linker with few and with more levels missed.</summary>
    public static IEnumerable<StudyRow> Run(int cases) =>
        [
            .. Rows("true links", cases, new ReadingHabit(), isLinked: false),
            .. Rows("true links, 10 % missed", cases, new ReadingHabit(0.10), isLinked: false),
            .. Rows("linker, 5 % missed", cases, ReadingHabit.OnTheTape(0.05), isLinked: true),
            .. Rows("linker, 10 % missed", cases, ReadingHabit.OnTheTape(0.10), isLinked: true),
            // Nothing tells neighbours apart but the tape and the lesion itself: told, not held to a bar.
            .. Rows(
                    "linker, 5 % missed, ligament alike everywhere",
                    cases,
                    ReadingHabit.OnTheTape(0.05) with
                    {
                        PlaceLogSpread = 0,
                    },
                    isLinked: true
                )
                .Select(row => row with { Bar = null }),
        ];

    /// <summary>The bars of docs/methods/healing.md in one regime.</summary>
    public static IEnumerable<StudyRow> Rows(string regime, int cases, ReadingHabit habit, bool isLinked)
    {
        StudyRow Row(string what, Bar? bar, Trend[][] all, Func<Trend[], bool> said) =>
            new(regime, what, bar, all.Count(said) / (double)cases, cases);

        Trend[][] healing = Looks(1, cases, habit, isLinked, LesionStories.Healing);
        yield return Row(
            "healing: no progress, healing slowly or worsening said",
            Bar.AtMost(0.03),
            healing,
            looks => looks.Any(Says(Verdict.Stalled, Verdict.HealingSlowly, Verdict.Worsening))
        );
        yield return Row("healing: healing said", null, healing, looks => looks.Any(Says(Verdict.Healing)));

        Trend[][] stalling = Looks(2, cases, habit, isLinked, LesionStories.Stalling);
        yield return Row(
            "stall named by the second examination",
            Bar.AtLeast(0.76),
            stalling,
            looks => looks[2..4].Any(Says(Verdict.Stalled))
        );
        yield return Row("stall named by the third", Bar.AtLeast(0.90), stalling, looks => looks[2..5].Any(Says(Verdict.Stalled)));

        Trend[][] worsening = Looks(3, cases, habit, isLinked, LesionStories.Worsening);
        yield return Row(
            "growth named by the second examination",
            Bar.AtLeast(0.86),
            worsening,
            looks => looks[2..4].Any(Says(Verdict.Worsening))
        );
        yield return Row("growth named by the third", Bar.AtLeast(0.96), worsening, looks => looks[2..5].Any(Says(Verdict.Worsening)));
        yield return Row(
            "growth: healing, slow healing or target said",
            Bar.AtMost(0.01),
            worsening,
            looks => looks[3..].Any(Says(Verdict.Healing, Verdict.HealingSlowly, Verdict.AtTarget))
        );

        Trend[][] flat = Looks(4, cases, habit, isLinked, LesionStories.Flat);
        yield return Row(
            "no change: healing, slow healing or target said",
            Bar.AtMost(0.06),
            flat,
            looks => looks.Any(Says(Verdict.Healing, Verdict.HealingSlowly, Verdict.AtTarget))
        );
        yield return Row("no change: worsening said", Bar.AtMost(0.08), flat, looks => looks.Any(Says(Verdict.Worsening)));
        yield return Row("no change: no progress said", null, flat, looks => looks.Any(Says(Verdict.Stalled)));
    }

    internal static Func<Trend, bool> Says(params Verdict[] verdicts) => trend => verdicts.Contains(trend.Verdict);

    /// <summary>The trend as it was said at every look of every case.</summary>
    private static Trend[][] Looks(int story, int cases, ReadingHabit habit, bool isLinked, Func<SimulatedLesion, CaseCourse> tell) =>
        Looks(story, cases, habit, tell, isLinked ? null : SimulatedLesion.TrueLinks, new AnalysisSettings());

    /// <summary>The trend as it was said at every look of every case.</summary>
    /// <param name="story">One number makes one set of cases.</param>
    /// <param name="cases">How many.</param>
    /// <param name="habit">How the levels are read.</param>
    /// <param name="tell">What truly happens.</param>
    /// <param name="links">The links of the whole course; null lets the linker find them at each look.</param>
    /// <param name="settings">The thresholds.</param>
    /// <param name="only">The only look to be read; null for all.</param>
    internal static Trend[][] Looks(
        int story,
        int cases,
        ReadingHabit habit,
        Func<SimulatedLesion, CaseCourse> tell,
        Func<CaseCourse, LinkedCourse>? links,
        AnalysisSettings settings,
        int? only = null
    )
    {
        Trend[][] all = new Trend[cases][];
        Parallel.For(
            0,
            cases,
            number =>
            {
                CaseCourse course = tell(new SimulatedLesion(Seed(story, number), habit));
                LinkedCourse? given = links?.Invoke(course);
                all[number] =
                [
                    .. (only is { } look ? [course.Examinations[look]] : course.Examinations).Select(examination =>
                        (
                            given is null
                                ? CaseAnalyser.Analyse(course, [], settings, examination.Date)
                                : CaseAnalyser.AnalyseLinked(course, given, settings, examination.Date)
                        ).Trend
                    ),
                ];
            }
        );
        return all;
    }

    private static int Seed(int story, int number) => (story * 1_000_003) + number;
}
