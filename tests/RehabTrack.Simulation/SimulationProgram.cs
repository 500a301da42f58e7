using System.Globalization;
using RehabTrack.Simulation.Permits;
using RehabTrack.Simulation.Studies;

namespace RehabTrack.Simulation;

/// <summary>
/// Prints what the engine reaches on cases whose truth is known, each figure beside its bar. An argument sets the number of cases.
/// With <c>permits</c> and a number it holds the permit against the naive model on so many made-up histories instead. Seeded: every run
/// prints the same.
/// </summary>
internal static class SimulationProgram
{
    private const int UsualCases = 1000;
    private const int UsualHistories = 100_000;

    private static int Main(string[] arguments)
    {
        if (arguments is ["permits", .. var rest])
        {
            return Permits(rest.Length > 0 ? Number(rest[0]) : UsualHistories);
        }

        int cases = arguments.Length > 0 ? Number(arguments[0]) : UsualCases;
        int missed = 0;
        Console.WriteLine("| cases made and linked | counted | bar | reached | |");
        Console.WriteLine("| --- | --- | --- | --- | --- |");
        foreach (
            StudyRow row in LinkingStudy
                .Run(cases / 2)
                .Concat(VerdictStudy.Run(cases))
                .Concat(CoverageStudy.Run(cases))
                .Concat(LevelClaimStudy.Run(cases))
                .Concat(ProjectionStudy.Run(cases))
        )
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

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Bars missed by more than chance explains: {missed}."));
        return 0;
    }

    private static int Permits(int histories)
    {
        IReadOnlyList<string> wrong = PermitTrials.Run(0, histories);
        foreach (string told in wrong.Take(3))
        {
            Console.WriteLine(told);
        }

        Console.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"Histories held against the model: {histories}, wrong: {wrong.Count}.")
        );
        return wrong.Count == 0 ? 0 : 1;
    }

    private static int Number(string text) => int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);
}
