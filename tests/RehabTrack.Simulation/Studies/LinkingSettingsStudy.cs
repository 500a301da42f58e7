using RehabTrack.Rechecks.Linking;
using RehabTrack.Simulation.Cases;
using RehabTrack.Simulation.Scores;

namespace RehabTrack.Simulation.Studies;

/// <summary>Parameters of the linker that could be chosen otherwise, held against each other on the same ligaments.</summary>
public static class LinkingSettingsStudy
{
    private static readonly LinkingSettings Usual = new();

    private static readonly (string Name, LinkingSettings Settings)[] Choices =
    [
        ("as set", Usual),
        ("change to ±1.3 by .26", Usual with { CommonLesionChangeLimit = 1.3, CommonLesionChangeStep = 0.26 }),
        ("change to ±1.3 by .13", Usual with { CommonLesionChangeLimit = 1.3, CommonLesionChangeStep = 0.13 }),
        ("backgrounds .3 and 1.2", Usual with { LogLigamentAreaBackground = 0.3, LogLesionAreaBackground = 1.2 }),
        (
            "backgrounds .3 and 1.2, penalties of growth to 6",
            Usual with
            {
                LogLigamentAreaBackground = 0.3,
                LogLesionAreaBackground = 1.2,
                LesionPenaltyCap = 6,
                LigamentGrowthPenaltyCap = 6,
            }
        ),
    ];

    /// <summary>Every choice in every regime of docs/methods/linking.md, in which a level newly abnormal is one more.</summary>
    public static IEnumerable<StudyRow> Run(int cases) =>
        Choices.AsParallel().AsOrdered().SelectMany(choice => Rows(choice.Name, choice.Settings, cases).ToList());

    private static IEnumerable<StudyRow> Rows(string name, LinkingSettings settings, int cases)
    {
        foreach (
            (string regime, SimulatedRegime read) in ((string, SimulatedRegime)[])
                [
                    ("2 cm, 5 %, 5 %", new SimulatedRegime(2, 0.05, 0.05)),
                    ("3 cm, 12 %, 15 %", new SimulatedRegime(3, 0.12, 0.15)),
                    ("2 cm, 10 %, 10 %", new SimulatedRegime(2, 0.1, 0.1)),
                    ("2 cm, doubling", new SimulatedRegime(2, 0.05, 0.05, 2)),
                    ("2 cm, areas running smoothly", new SimulatedRegime(2, 0.05, 0.05) { SmoothAreas = true }),
                ]
        )
        {
            LinkScore score = LinkingStudy.Score(read, cases, settings);
            yield return new StudyRow($"{name}: {regime}", "F1 over neighbouring examinations", null, score.F1, cases);
            yield return new StudyRow($"{name}: {regime}", "recall, fifth examination to first", null, score.FarRecall, cases);
            yield return new StudyRow($"{name}: {regime}", "links said at least .9 that are right", null, score.SureRight, cases);
        }

        LinkScore struck = LinkingStudy.Score(new SimulatedRegime(2, 0.05, 0.05) { NewLesion = true }, cases, settings);
        yield return new StudyRow($"{name}: 2 cm, a level newly abnormal", "its link found", null, struck.StruckRecall, cases);
        yield return new StudyRow($"{name}: 2 cm, a level newly abnormal", "found or asked", null, struck.StruckLinkedOrAsked, cases);
    }
}
