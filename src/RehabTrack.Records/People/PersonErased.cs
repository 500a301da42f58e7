namespace RehabTrack.Records.People;

/// <summary>What was erased.</summary>
/// <param name="Id">The person.</param>
/// <param name="NameKept">Whether the name stays, because it stands under a signature.</param>
/// <param name="Lines">How many lines of the trail were emptied.</param>
public sealed record PersonErased(Guid Id, bool NameKept, int Lines);
