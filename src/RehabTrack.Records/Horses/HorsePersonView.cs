namespace RehabTrack.Records.Horses;

/// <summary>A person beside a horse.</summary>
/// <param name="PersonId">The person.</param>
/// <param name="Name">Name.</param>
/// <param name="Phone">Telephone; null when not given.</param>
/// <param name="Mail">Mail; null when not given.</param>
/// <param name="Relation">What the person is to the horse.</param>
/// <param name="From">Since when.</param>
public sealed record HorsePersonView(Guid PersonId, string Name, string? Phone, string? Mail, HorseRelation Relation, DateOnly From);
