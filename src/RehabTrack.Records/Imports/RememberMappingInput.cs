using RehabTrack.Records.Room;

namespace RehabTrack.Records.Imports;

/// <summary>How a sheet with headings of its own is read.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="Fingerprint">Tells the headings apart from others.</param>
/// <param name="Mapping">The mapping, as JSON.</param>
public sealed record RememberMappingInput(Guid CommandId, string Fingerprint, string Mapping) : ICommand;
