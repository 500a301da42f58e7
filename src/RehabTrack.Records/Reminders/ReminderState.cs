namespace RehabTrack.Records.Reminders;

/// <summary>What became of a reminder.</summary>
public enum ReminderState
{
    /// <summary>The mail server was asked, and whether it took the letter is not known.</summary>
    Begun,

    /// <summary>The mail server took the letter.</summary>
    Sent,

    /// <summary>The letter did not go out.</summary>
    Refused,
}
