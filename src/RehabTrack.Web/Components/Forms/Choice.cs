namespace RehabTrack.Web.Components.Forms;

/// <summary>One line of a list to choose from.</summary>
/// <param name="Value">What is chosen.</param>
/// <param name="Text">What a person reads.</param>
public sealed record Choice<TValue>(TValue? Value, string Text)
{
    /// <summary>What the field holds while it is chosen; null takes its place in the list, which is enough where the list never changes.</summary>
    public string? Key { get; init; }
}
