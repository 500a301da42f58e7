namespace RehabTrack.Web.Features.Decisions;

/// <summary>What a vet wants owner and trainer to read.</summary>
/// <param name="Owner">The owner's sentences.</param>
/// <param name="Trainer">The trainer's sentences.</param>
/// <param name="WithPicture">Whether the owner sees the sizes of the injuries.</param>
public sealed record ReleaseWish(IReadOnlyList<string> Owner, IReadOnlyList<string> Trainer, bool WithPicture);
