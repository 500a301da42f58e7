namespace RehabTrack.Records.Shares;

/// <summary>Which share links.</summary>
/// <param name="PersonId">Those of a person; null for everybody's.</param>
/// <param name="HorseId">Those that open a horse; null for any.</param>
public sealed record ListSharesInput(Guid? PersonId, Guid? HorseId);
