using System.Diagnostics;
using System.Globalization;
using RehabTrack.Simulation.Permits;
using RehabTrack.Simulation.Studies;

namespace RehabTrack.Simulation;

/// <summary>
/// Prints what the engine reaches on cases whose truth is known, each figure beside its bar. An argument sets the number of cases.
/// With <c>permits</c> and a number it holds the permit against the naive model on so many made-up histories instead, from the seed on
/// that may follow; with <c>linking-settings</c> and a number it holds parameters of the linker against each other. Seeded: every run
/// prints the same figures.
/// </summary>
internal static class SimulationProgram
{
    private const int UsualCases = 1000;
    private const int UsualHistories = 100_000;

    // What the whole study may take on two idle cores with 2000 cases.
    private const double LongestMinutes = 3;

    private static int Main(string[] arguments)
    {
        if (arguments is ["permits", .. var rest])
        {
            return Permits(rest.Length > 0 ? Number(rest[0]) : UsualHistories, rest.Length > 1 ? Number(rest[1]) : 0);
        }

        if (arguments is ["linking-settings", .. var choices])
        {
            Print(LinkingSettingsStudy.Run(choices.Length > 0 ? Number(choices[0]) : UsualCases));
            return 0;
        }

        long begun = Stopwatch.GetTimestamp();
        int cases = arguments.Length > 0 ? Number(arguments[0]) : UsualCases;
        int missed = Print(
            LinkingStudy
                .Run(cases / 2)
                .Concat(VerdictStudy.Run(cases))
                .Concat(CoverageStudy.Run(cases))
                .Concat(LevelClaimStudy.Run(cases))
                .Concat(ProjectionStudy.Run(cases))
                .Concat(VolumeStudy.Run(cases))
                .Concat(FailureStudy.Run(cases))
        );
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Bars missed by more than chance explains: {missed}."));
        TimeSpan took = Stopwatch.GetElapsedTime(begun);
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Took {took.TotalMinutes:0.0} min of {LongestMinutes:0} min{(took.TotalMinutes > LongestMinutes ? ": too long" : "")}."
            )
        );
        return 0;
    }

    /// <summary>Prints each row beside its bar as soon as it is known.</summary>
    /// <returns>How many bars are missed by more than chance explains.</returns>
    private static int Print(IEnumerable<StudyRow> rows)
    {
        int missed = 0;
        Console.WriteLine("| cases made and linked | counted | bar | reached | |");
        Console.WriteLine("| --- | --- | --- | --- | --- |");
        foreach (StudyRow row in rows)
        {
            string word =
                row.Keeps ? ""
                : row.KeepsWithinChance ? "within chance"
                : "missed";
            missed += row.KeepsWithinChance ? 0 : 1;
            Console.WriteLine(
                string.Create(CultureInfo.InvariantCulture, $"| {row.Regime} | {row.What} | {row.Bar} | {row.Reached:.000} | {word} |")
            );
        }

        return missed;
    }

    private static int Permits(int histories, int first)
    {
        IReadOnlyList<string> wrong = PermitTrials.Run(first, histories);
        foreach (string told in wrong.Take(3))
        {
            Console.WriteLine(told);
        }

        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Histories held against the model: {histories} from seed {first} on, wrong: {wrong.Count}."
            )
        );
        return wrong.Count == 0 ? 0 : 1;
    }

    private static int Number(string text) => int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);
}
