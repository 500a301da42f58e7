namespace RehabTrack.Records.Keeping;

/// <summary>
/// Kinds of lines of the trail whose words can be erased, because they are a person's own: what is told of people, of letters and
/// calls to them and of their coming in. What is told of horses never is.
/// </summary>
internal static class Erasable
{
    public static IReadOnlyList<string> Kinds { get; } = ["Person", "Reminder", "Call", History.AccessLine.Kind];
}
