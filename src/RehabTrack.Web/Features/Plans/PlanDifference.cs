namespace RehabTrack.Web.Features.Plans;

/// <summary>One field of a plan that two people changed differently.</summary>
/// <param name="Step">The step as it stands on the page; null for a field beside the steps.</param>
/// <param name="Name">The field.</param>
/// <param name="Mine">What is typed here, in words, as it is now.</param>
/// <param name="Theirs">What the other person saved, in words.</param>
/// <param name="Take">Takes the other person's.</param>
public sealed record PlanDifference(StepEntry? Step, string Name, Func<string> Mine, string Theirs, Action Take)
{
    /// <summary>Tells it from the others, from one comparison to the next.</summary>
    public object Key => (Step?.Key, Name);
}
