namespace RehabTrack.Web.Tests.Walk;

/// <summary>What the id in an address names.</summary>
internal enum Subject
{
    /// <summary>The address holds none.</summary>
    None,

    Horse,
    Case,
    Examination,
    Booking,
    Person,
    Yard,
    ImportFile,
    Report,

    /// <summary>The secret of the practice's calendar.</summary>
    Calendar,
}
