namespace RehabTrack.Web.Components.Exercise;

/// <summary>One component of the permit, without and with a signature.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Before">As it stands.</param>
/// <param name="After">With the signature.</param>
/// <param name="Change">Which way it moves.</param>
public sealed record PermitSide(string Name, string Before, string After, PermitChange Change);
