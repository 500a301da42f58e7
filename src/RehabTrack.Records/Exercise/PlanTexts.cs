using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>The texts of a plan as they can be kept.</summary>
internal static class PlanTexts
{
    /// <summary>What keeps a text of a plan from being kept, each at its field.</summary>
    public static List<Problem> Unkeepable(PlanVersion plan) =>
        [
            .. new[]
            {
                Checks.Unkeepable("title", plan.Title, Checks.LongestName),
                Checks.Unkeepable("template", plan.Template, Checks.LongestName),
            }
                .Concat(plan.Steps.SelectMany((step, index) => OfStep(step, $"steps[{RecordText.Of(index)}]")))
                .OfType<Problem>(),
        ];

    private static IEnumerable<Problem?> OfStep(PlanStep step, string field) =>
        [
            Checks.Unkeepable($"{field}.name", step.Name, Checks.LongestName),
            Checks.Unkeepable($"{field}.gate", step.Gate?.Criteria, Checks.LongestText),
            Checks.Unkeepable($"{field}.note", step.Note, Checks.LongestText),
        ];
}
