using System.Globalization;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Simulation.Cases;
using RehabTrack.Simulation.Scores;

namespace RehabTrack.Simulation.Studies;

/// <summary>How many places are found again, and how far the probabilities can be trusted.</summary>
public static class LinkingStudy
{
    private const int FirstSeed = 50_000;

    /// <summary>The regimes of docs/methods/linking.md.</summary>
    public static IEnumerable<StudyRow> Run(int cases)
    {
        const string few = "links, 2 cm apart, 5 % missed, 5 % added";
        LinkScore score = Score(new SimulatedRegime(2, 0.05, 0.05), cases);
        yield return new StudyRow(few, "F1 over neighbouring examinations", Bar.AtLeast(0.93), score.F1, cases);
        yield return new StudyRow(few, "links said at least .9 that are right", Bar.AtLeast(0.95), score.SureRight, cases);

        score = Score(new SimulatedRegime(3, 0.12, 0.15), cases);
        yield return new StudyRow(
            "links, 3 cm apart, 12 % missed, 15 % added",
            "F1 over neighbouring examinations",
            Bar.AtLeast(0.865),
            score.F1,
            cases
        );

        const string more = "links, 2 cm apart, 10 % missed, 10 % added";
        score = Score(new SimulatedRegime(2, 0.1, 0.1), cases);
        yield return new StudyRow(more, "recall, fifth examination to first", Bar.AtLeast(0.83), score.FarRecall, cases);
        yield return new StudyRow(more, "precision, fifth examination to first", Bar.AtLeast(0.87), score.FarPrecision, cases);
        yield return new StudyRow(more, "links said at least .9 that are right", Bar.AtLeast(0.90), score.SureRight, cases);

        foreach (double spacing in (double[])[2, 3])
        {
            score = Score(new SimulatedRegime(spacing, 0.05, 0.05, 2), cases);
            yield return new StudyRow(
                string.Create(CultureInfo.InvariantCulture, $"links, {spacing} cm apart, lesion doubling from the third"),
                "recall, fifth examination to first",
                Bar.AtLeast(0.97),
                score.FarRecall,
                cases
            );
        }
    }

    /// <summary>Links so many ligaments of one regime.</summary>
    /// <param name="regime">How the ligaments are read.</param>
    /// <param name="cases">How many.</param>
    /// <param name="settings">The parameters of the linker; null for those of the table.</param>
    public static LinkScore Score(SimulatedRegime regime, int cases, LinkingSettings? settings = null)
    {
        LinkScore score = new();
        settings ??= new LinkingSettings();
        for (int number = 0; number < cases; number++)
        {
            SimulatedLigament ligament = SimulatedLigament.Of(FirstSeed + number, regime);
            score.Add(ligament, LevelLinker.Link(ligament.Examinations, [], settings));
        }

        return score;
    }
}
