namespace RehabTrack.Records.Exercise;

/// <summary>What owner and trainer read of a decision, sentence by sentence, as the vet released it.</summary>
/// <param name="Owner">For the owner.</param>
/// <param name="Trainer">For the trainer.</param>
public sealed record Release(IReadOnlyList<string> Owner, IReadOnlyList<string> Trainer);
