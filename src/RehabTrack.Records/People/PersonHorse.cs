using RehabTrack.Records.Horses;

namespace RehabTrack.Records.People;

/// <summary>A horse beside which a person stands.</summary>
/// <param name="HorseId">The horse.</param>
/// <param name="Name">Its name.</param>
/// <param name="Relation">What the person is to it.</param>
public sealed record PersonHorse(Guid HorseId, string Name, HorseRelation Relation);
