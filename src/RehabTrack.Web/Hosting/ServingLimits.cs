using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Web.Hosting;

/// <summary>How much one person or one network address may ask of the server; values and sources stand in <c>shared/serving.json</c>.</summary>
public sealed record ServingLimits
{
    private const int Kilobyte = 1000;

    private static readonly ReferenceTable Table = ReferenceTable.Load("serving");

    /// <summary>Live pages that one person may have open.</summary>
    public int WindowsPerPerson { get; init; } = (int)Table["windowsPerPerson"];

    /// <summary>Live pages that may be open from one network address.</summary>
    public int WindowsPerAddress { get; init; } = (int)Table["windowsPerAddress"];

    /// <summary>The largest message of a live page, in bytes.</summary>
    public int MessageBytes { get; init; } = (int)Table["messageKilobytes"] * Kilobyte;

    /// <summary>The largest body of a request that brings no file, in bytes.</summary>
    public int RequestBytes { get; init; } = (int)Table["requestKilobytes"] * Kilobyte;

    /// <summary>Files that one person may take out in a minute.</summary>
    public int FilesPerMinute { get; init; } = (int)Table["filesPerMinute"];

    /// <summary>Files that one person may hand in in a minute.</summary>
    public int UploadsPerMinute { get; init; } = (int)Table["uploadsPerMinute"];

    /// <summary>Questions for calendars from one network address in a minute.</summary>
    public int CalendarsPerMinute { get; init; } = (int)Table["calendarsPerMinute"];

    /// <summary>Questions for the state of the server from one network address in a minute.</summary>
    public int HealthPerMinute { get; init; } = (int)Table["healthPerMinute"];

    /// <summary>How long what is under way may take to end when the server is stopped.</summary>
    public TimeSpan Shutdown { get; init; } = TimeSpan.FromSeconds(Table["shutdownSeconds"]);
}
