namespace RehabTrack.Records.Exercise;

/// <summary>What owner and trainer read of a decision, sentence by sentence, as the vet released it.</summary>
/// <param name="Owner">For the owner.</param>
/// <param name="Trainer">For the trainer.</param>
/// <param name="Pictures">For the owner, an injury each; null or empty when none was released.</param>
public sealed record Release(IReadOnlyList<string> Owner, IReadOnlyList<string> Trainer, IReadOnlyList<SizePicture>? Pictures = null);
