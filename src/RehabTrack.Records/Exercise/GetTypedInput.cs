namespace RehabTrack.Records.Exercise;

/// <summary>Asks for a form as it is being filled in.</summary>
/// <param name="HorseId">The horse.</param>
/// <param name="Form">The form.</param>
public sealed record GetTypedInput(Guid HorseId, TypedForm Form);
