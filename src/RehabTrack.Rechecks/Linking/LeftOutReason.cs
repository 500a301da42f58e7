namespace RehabTrack.Rechecks.Linking;

/// <summary>Why a person's word on a link could not be kept.</summary>
public enum LeftOutReason
{
    /// <summary>One of the places is not among the examinations given.</summary>
    PlaceNotFound,

    /// <summary>The places lie on different paths.</summary>
    DifferentPaths,

    /// <summary>Both places belong to one examination, directly or through earlier pins; a track holds one place an examination.</summary>
    SameExamination,

    /// <summary>An earlier word says the opposite of the same two places.</summary>
    Contradicted,

    /// <summary>It would cross an earlier pin: order along a path never swaps.</summary>
    Crossing,
}
