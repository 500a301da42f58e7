namespace RehabTrack.Records.Exercise;

/// <summary>What was released of a horse to the one who reads it.</summary>
/// <param name="Standing">Whether it may be read today.</param>
/// <param name="At">When it was released (UTC); null when nothing was.</param>
/// <param name="From">The first day of its decision; null unless it is still to come.</param>
/// <param name="Sentences">What to read, sentence by sentence; empty unless it counts.</param>
/// <param name="Pictures">The sizes of the injuries; empty unless it counts and is read by the owner.</param>
public sealed record YardRelease(
    ReleaseStanding Standing,
    DateTime? At,
    DateOnly? From,
    IReadOnlyList<string> Sentences,
    IReadOnlyList<SizePicture> Pictures
)
{
    /// <summary>Nothing was released.</summary>
    public static YardRelease None { get; } = new(ReleaseStanding.Nothing, null, null, [], []);
}
