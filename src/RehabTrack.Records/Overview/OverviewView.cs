namespace RehabTrack.Records.Overview;

/// <summary>What the start page says.</summary>
public sealed record OverviewView
{
    /// <summary>The practice's name.</summary>
    public required string PracticeName { get; init; }

    /// <summary>The practice's time zone.</summary>
    public required string TimeZone { get; init; }

    /// <summary>The practice's date.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>Horses that count.</summary>
    public required int HorseCount { get; init; }

    /// <summary>Open cases.</summary>
    public required int OpenCaseCount { get; init; }

    /// <summary>How many rechecks are past their date; they stand in the list of what needs a person.</summary>
    public required int OverdueCount { get; init; }

    /// <summary>Rechecks due within the days of the schedule table, soonest first; at most fifty.</summary>
    public required IReadOnlyList<OverviewRow> Soon { get; init; }

    /// <summary>How many are due soon in all.</summary>
    public required int SoonCount { get; init; }

    /// <summary>Open cases with imported examinations only: nothing was signed here, so nothing reminds of them; latest first, at most fifty.</summary>
    public required IReadOnlyList<OverviewRow> OnlyHistory { get; init; }

    /// <summary>How many of those there are in all.</summary>
    public required int OnlyHistoryCount { get; init; }

    /// <summary>Drafts that wait to be finished and signed, latest first; at most fifty.</summary>
    public required IReadOnlyList<DraftRow> Drafts { get; init; }
}
