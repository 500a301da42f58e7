namespace RehabTrack.Rechecks.Healing;

/// <summary>What can be claimed of a change between two dates.</summary>
public enum ChangeClaim
{
    /// <summary>The change lies inside what measurement alone would do.</summary>
    CannotTell,

    /// <summary>It is smaller, by more than that.</summary>
    RealFall,

    /// <summary>It is larger, by more than that.</summary>
    RealRise,
}
