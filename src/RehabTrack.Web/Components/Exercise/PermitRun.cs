using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Web.Components.Exercise;

/// <summary>Successive days on which nothing changes, without and with a signature.</summary>
/// <param name="From">The first day.</param>
/// <param name="To">The last day.</param>
/// <param name="Before">As it stands.</param>
/// <param name="After">With the signature.</param>
/// <param name="Change">Which way the signature moves it.</param>
public sealed record PermitRun(DateOnly From, DateOnly To, Work Before, Work After, PermitChange Change);
