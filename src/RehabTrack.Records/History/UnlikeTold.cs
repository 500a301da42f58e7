namespace RehabTrack.Records.History;

/// <summary>A record that is not as the trail told of it last.</summary>
/// <param name="Kind">The kind of record, as the trail calls it.</param>
/// <param name="Id">Which.</param>
/// <param name="Field">The field that differs, or the id of a reading that is gone.</param>
internal sealed record UnlikeTold(string Kind, Guid Id, string Field);
