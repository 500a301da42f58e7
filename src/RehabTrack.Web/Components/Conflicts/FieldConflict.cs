using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Conflicts;

/// <summary>One field that two people changed differently.</summary>
/// <param name="Key">Tells the field from the others.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Mine">What was typed here.</param>
/// <param name="Theirs">What the other person saved.</param>
public sealed record FieldConflict(object Key, string Name, string Mine, string Theirs)
{
    /// <summary>A value as a person reads it: a field that was emptied says so.</summary>
    public static string Shown(string text) => string.IsNullOrWhiteSpace(text) ? FormTexts.ConflictBlank : text;
}
