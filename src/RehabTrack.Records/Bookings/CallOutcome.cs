namespace RehabTrack.Records.Bookings;

/// <summary>What came of a call.</summary>
public enum CallOutcome
{
    /// <summary>Somebody was spoken to.</summary>
    Spoke,

    /// <summary>A message was left.</summary>
    LeftMessage,

    /// <summary>Nobody answered.</summary>
    NoAnswer,

    /// <summary>No call: a note only.</summary>
    Note,
}
