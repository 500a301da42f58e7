using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Permits;

/// <summary>The days that permits go by; defaults and sources stand in <c>shared/permits.json</c>.</summary>
public sealed record PermitSettings
{
    private static readonly ReferenceTable Table = ReferenceTable.Load("permits");

    /// <summary>Days after the due date of a recheck before the permit lapses to the floor, at least 0.</summary>
    public int GraceDays { get; init; } = (int)Table["graceDays"];

    /// <summary>More days than these out of work, or without a log, need a vet's word; at least 0.</summary>
    public int AwayDays { get; init; } = (int)Table["awayDays"];

    /// <summary>After so many days without a log growth stops, at least 1.</summary>
    public int LogGapDays { get; init; } = (int)Table["logGapDays"];

    /// <summary>A log entered more days than these after its day is history: it lets no time run, at least 0.</summary>
    public int LogInTimeDays { get; init; } = (int)Table["logInTimeDays"];

    /// <summary>Days until the recheck after a hold that names none, at least 1.</summary>
    public int HoldDays { get; init; } = (int)Table["holdDays"];

    /// <summary>A printed permit is void after so many days at the latest, at least 0.</summary>
    public int PrintDays { get; init; } = (int)Table["printDays"];

    /// <summary>Days for which a horse whose case was closed is still shown to its trainer and owner, with no work signed; at least 0.</summary>
    public int ClosedDays { get; init; } = (int)Table["closedDays"];

    /// <summary>A drop of the permit is asked about for so many days, whether the trainer has seen it; at least 0.</summary>
    public int DropDays { get; init; } = (int)Table["dropDays"];

    /// <summary>A log of a day longer ago than so many days is asked about, at least 0.</summary>
    public int BackfillDays { get; init; } = (int)Table["backfillDays"];

    /// <summary>Less than this share of the week's permitted minutes counts as under, %, 0 to 100.</summary>
    public int UnderPercent { get; init; } = (int)Table["underPercent"];
}
