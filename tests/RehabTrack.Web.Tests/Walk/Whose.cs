namespace RehabTrack.Web.Tests.Walk;

/// <summary>Whose records an address names.</summary>
internal enum Whose
{
    /// <summary>The practice's, of the horse beside which its people from outside stand.</summary>
    Own,

    /// <summary>The same practice's, of a horse beside which others stand.</summary>
    Neighbours,

    /// <summary>Another practice's in the same database.</summary>
    OtherPractices,

    /// <summary>Nobody's: an id of nothing.</summary>
    Nobodys,
}
