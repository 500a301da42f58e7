namespace RehabTrack.Records.Keeping;

/// <summary>Who writes, when, in answer to which command: what a line of the history needs.</summary>
internal sealed record Writer(Guid PersonId, DateTime At, Guid CommandId, string UseCase);
