namespace RehabTrack.Web.Components.Conflicts;

/// <summary>One field that two people changed differently.</summary>
/// <param name="Key">Tells the field from the others.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Mine">What was typed here.</param>
/// <param name="Theirs">What the other person saved.</param>
public sealed record FieldConflict(object Key, string Name, string Mine, string Theirs);
