using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Rechecks.Linking;

/// <summary>A person's word on whether two places of two examinations are the same. Both lie on one path.</summary>
/// <param name="Kind">Pinned together or kept apart.</param>
/// <param name="First">A place of one examination.</param>
/// <param name="Second">A place of another examination, on the same path.</param>
public sealed record LinkConstraint(LinkConstraintKind Kind, PlaceKey First, PlaceKey Second);
