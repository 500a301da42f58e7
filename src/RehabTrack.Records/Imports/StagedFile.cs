namespace RehabTrack.Records.Imports;

/// <summary>A file that was handed in.</summary>
/// <param name="Id">Identity.</param>
/// <param name="FileName">Its name.</param>
/// <param name="Content">The bytes.</param>
/// <param name="HandedInAt">When, UTC.</param>
/// <param name="AppliedAt">When it was imported, UTC; null while it waits.</param>
public sealed record StagedFile(Guid Id, string FileName, byte[] Content, DateTime HandedInAt, DateTime? AppliedAt);
