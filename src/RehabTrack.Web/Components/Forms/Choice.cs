namespace RehabTrack.Web.Components.Forms;

/// <summary>One line of a list to choose from.</summary>
/// <param name="Value">What is chosen.</param>
/// <param name="Text">What a person reads.</param>
public sealed record Choice<TValue>(TValue? Value, string Text);
