using RehabTrack.Rechecks.Care;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Care;

namespace RehabTrack.Web.Features.Timeline;

/// <summary>A treatment, medicine or sign as it is being typed.</summary>
public sealed class CareDraft
{
    /// <summary>Begins a new one on a day.</summary>
    public CareDraft(DateOnly day) => From = day;

    /// <summary>Takes one that is to be corrected.</summary>
    public CareDraft(CareView care)
    {
        ArgumentNullException.ThrowIfNull(care);
        Id = care.Id;
        Take(care);
    }

    /// <summary>Takes it as it stands now, in place of what was typed.</summary>
    public void Take(CareView care)
    {
        ArgumentNullException.ThrowIfNull(care);
        Version = care.Version;
        CareEntry entry = care.Entry;
        (Kind, CaseId, From, Until) = (entry.Kind, entry.CaseId, entry.From, entry.Until);
        (Grade, LamenessAaep, Context, Words) = (entry.Grade, entry.LamenessAaep, entry.Context, entry.Words);
        StandDownUntil = entry.StandDownUntil;
    }

    /// <summary>The entry that is corrected; null for a new one.</summary>
    public Guid? Id { get; }

    /// <summary>The version that was read.</summary>
    public Guid? Version { get; private set; }

    /// <summary>What it is; null until it is chosen.</summary>
    public CareKind? Kind { get; set; }

    /// <summary>The case; null for the whole horse.</summary>
    public string? CaseId { get; set; }

    /// <summary>The day, or the first day; null when it cannot be read.</summary>
    public DateOnly? From { get; set; }

    /// <summary>The last day.</summary>
    public DateOnly? Until { get; set; }

    /// <summary>How clear a sign is.</summary>
    public SignGrade Grade { get; set; }

    /// <summary>How lame.</summary>
    public int? LamenessAaep { get; set; }

    /// <summary>How lameness was looked for.</summary>
    public string? Context { get; set; }

    /// <summary>Whatever else.</summary>
    public string? Words { get; set; }

    /// <summary>The vet's stand-down date.</summary>
    public DateOnly? StandDownUntil { get; set; }

    /// <summary>What it says; null while kind or day are missing.</summary>
    public CareEntry? Read() =>
        Kind is { } kind && From is { } from
            ? new CareEntry
            {
                Kind = kind,
                From = from,
                Until = Until,
                CaseId = CaseId,
                Grade = Grade,
                LamenessAaep = LamenessAaep,
                Context = Context,
                Words = Words,
                StandDownUntil = StandDownUntil,
            }
            : null;
}
