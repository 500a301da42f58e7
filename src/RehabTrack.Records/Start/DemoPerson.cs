namespace RehabTrack.Records.Start;

/// <summary>A person of the demo.</summary>
/// <param name="Key">By what the definition names the person.</param>
/// <param name="Name">Name.</param>
/// <param name="Kind">vet, assistant, trainer, owner or referring-vet.</param>
/// <param name="Phone">Telephone.</param>
/// <param name="Mail">Mail.</param>
/// <param name="Language">Language.</param>
public sealed record DemoPerson(string Key, string Name, string Kind, string? Phone, string? Mail, string Language);
