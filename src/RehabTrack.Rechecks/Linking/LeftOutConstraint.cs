namespace RehabTrack.Rechecks.Linking;

/// <summary>A person's word that was not followed, because it contradicts an earlier one or the rules of linking.</summary>
/// <param name="Constraint">The word.</param>
/// <param name="Reason">What stands against it.</param>
public sealed record LeftOutConstraint(LinkConstraint Constraint, LeftOutReason Reason);
