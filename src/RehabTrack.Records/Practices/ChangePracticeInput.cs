using RehabTrack.Rechecks.Analysis;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Practices;

/// <summary>The practice as it shall be.</summary>
public sealed record ChangePracticeInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The version that was read.</summary>
    public required Guid Version { get; init; }

    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>Telephone.</summary>
    public string? Phone { get; init; }

    /// <summary>Time zone, as "Europe/Vienna".</summary>
    public required string TimeZone { get; init; }

    /// <summary>Language, as "en".</summary>
    public required string Language { get; init; }

    /// <summary>Days to the recheck; null takes the table's.</summary>
    public int? RecheckIntervalDays { get; init; }

    /// <summary>Whether the change against last time shows while an examination is entered.</summary>
    public bool ShowChangeWhileEntering { get; init; }

    /// <summary>Days for which notes of access are kept; null takes the table's.</summary>
    public int? AccessKeptDays { get; init; }

    /// <summary>Days for which the addresses of letters and the words of calls are kept; null takes the table's.</summary>
    public int? ContactKeptDays { get; init; }

    /// <summary>Analysis settings; null takes the tables'.</summary>
    public AnalysisSettings? Settings { get; init; }

    /// <summary>The practice as it was read: what is to be changed is set on it.</summary>
    public static ChangePracticeInput Of(PracticeView practice, Guid commandId)
    {
        ArgumentNullException.ThrowIfNull(practice);
        return new ChangePracticeInput
        {
            CommandId = commandId,
            Version = practice.Version,
            Name = practice.Name,
            Phone = practice.Phone,
            TimeZone = practice.TimeZone,
            Language = practice.Language,
            RecheckIntervalDays = practice.IntervalIsUsual ? null : practice.RecheckIntervalDays,
            ShowChangeWhileEntering = practice.ShowChangeWhileEntering,
            AccessKeptDays = practice.AccessKeptDays,
            ContactKeptDays = practice.ContactKeptDays,
            Settings = practice.SettingsAreUsual ? null : practice.Settings,
        };
    }
}
