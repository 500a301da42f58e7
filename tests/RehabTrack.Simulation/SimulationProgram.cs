using System.Globalization;
using RehabTrack.Simulation.Studies;

namespace RehabTrack.Simulation;

/// <summary>
/// Prints what the engine reaches on cases whose truth is known, each figure beside its bar. An argument sets the number of cases.
/// Seeded: every run prints the same.
/// </summary>
internal static class SimulationProgram
{
    private const int UsualCases = 1000;

    private static void Main(string[] arguments)
    {
        int cases = arguments.Length > 0 ? int.Parse(arguments[0], NumberStyles.None, CultureInfo.InvariantCulture) : UsualCases;
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
    }
}
