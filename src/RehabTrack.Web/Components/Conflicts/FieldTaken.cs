namespace RehabTrack.Web.Components.Conflicts;

/// <summary>A field that only the other person changed: what they saved stands in the form now.</summary>
/// <param name="Name">What people call it.</param>
/// <param name="Text">What it holds now.</param>
public sealed record FieldTaken(string Name, string Text);
