namespace RehabTrack.Records.Exercise;

/// <summary>Whether what a vet released of a horse may still be read.</summary>
public enum ReleaseStanding
{
    /// <summary>Nothing was released.</summary>
    Nothing,

    /// <summary>It is of the last signature, and nothing keeps the permit below what was signed.</summary>
    Counts,

    /// <summary>It is of the last signature, which has not begun to count.</summary>
    NotYet,

    /// <summary>It is of the last signature, and less is permitted today than was signed, or a concern is open.</summary>
    NotToday,

    /// <summary>A later signature has taken its place.</summary>
    Over,
}
