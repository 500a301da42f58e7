namespace RehabTrack.Rechecks.Exercise;

/// <summary>Whether an outing may go in circles, least first. Unfilled is straight lines only.</summary>
public enum Circles
{
    /// <summary>Straight lines only.</summary>
    None,

    /// <summary>Large circles.</summary>
    Large,

    /// <summary>Circles of any size.</summary>
    Any,
}
