using RehabTrack.Records.Room;

namespace RehabTrack.Records.Imports;

/// <summary>A file handed in.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="FileName">Its name.</param>
/// <param name="Content">The bytes.</param>
public sealed record StageImportFileInput(Guid CommandId, string FileName, byte[] Content) : ICommand;
