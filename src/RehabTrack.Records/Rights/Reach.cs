namespace RehabTrack.Records.Rights;

/// <summary>How far a right reaches.</summary>
public enum Reach
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>The horses the person stands beside today, and only what was released.</summary>
    OwnHorses,

    /// <summary>The whole practice.</summary>
    Practice,
}
