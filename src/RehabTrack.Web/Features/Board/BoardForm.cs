namespace RehabTrack.Web.Features.Board;

/// <summary>What can be done about a row of the board; the form that is open stands in the address.</summary>
public enum BoardForm
{
    /// <summary>Nothing is open.</summary>
    None,

    /// <summary>Book or move.</summary>
    Book,

    /// <summary>Cancel.</summary>
    Cancel,

    /// <summary>Note a call.</summary>
    Call,

    /// <summary>The interval, and the end of a case.</summary>
    More,
}
