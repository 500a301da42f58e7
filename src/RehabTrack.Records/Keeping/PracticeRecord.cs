namespace RehabTrack.Records.Keeping;

internal sealed class PracticeRecord : KeptRecord
{
    public required string Name { get; set; }

    public string? Phone { get; set; }

    public required string TimeZone { get; set; }

    public required string Language { get; set; }

    /// <summary>Days from a signed examination to the recheck; null takes the table.</summary>
    public int? RecheckIntervalDays { get; set; }

    /// <summary>Whether the change against last time shows while an examination is entered.</summary>
    public bool ShowChangeWhileEntering { get; set; }

    /// <summary>Days for which notes of access are kept; null takes the table.</summary>
    public int? AccessKeptDays { get; set; }

    /// <summary>Days for which the addresses of letters and the words of calls are kept; null takes the table.</summary>
    public int? ContactKeptDays { get; set; }

    /// <summary>Analysis settings as JSON; null takes the tables.</summary>
    public string? SettingsJson { get; set; }

    /// <summary>Where cvs of its own come from, as JSON; null when all are the tables'.</summary>
    public string? ErrorOriginsJson { get; set; }
}
