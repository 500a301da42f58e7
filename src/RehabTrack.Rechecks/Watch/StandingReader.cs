using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Schedule;

namespace RehabTrack.Rechecks.Watch;

/// <summary>Says what stands and needs a person.</summary>
public static class StandingReader
{
    /// <summary>What stands on a day, most severe first, then what has stood longest.</summary>
    /// <param name="horse">The horse.</param>
    /// <param name="today">The practice's calendar date.</param>
    /// <param name="settings">From when on something stands; null for the defaults.</param>
    /// <param name="permits">The days that permits go by; null for the defaults.</param>
    public static IReadOnlyList<StandingFinding> Of(
        WatchedHorse horse,
        DateOnly today,
        WatchSettings? settings = null,
        PermitSettings? permits = null
    )
    {
        ArgumentNullException.ThrowIfNull(horse);
        settings ??= new WatchSettings();
        Permit permit = PermitReader.For(horse.History, today, permits);
        return
        [
            .. horse
                .Cases.SelectMany(injury => OfCase(injury, permit, today))
                .Concat(Rechecks(horse, permit, today, settings))
                .Concat(OfExercise(horse, permit, today, settings))
                .OrderByDescending(finding => finding.Severity)
                .ThenBy(finding => finding.Since)
                .ThenBy(finding => finding.Kind)
                .ThenBy(finding => finding.Key, StringComparer.Ordinal),
        ];
    }

    /// <summary>What the analysis of a case says now; what an earlier examination said was looked at then.</summary>
    private static IEnumerable<StandingFinding> OfCase(WatchedCase injury, Permit permit, DateOnly today) =>
        injury
            .Findings.Where(finding => !finding.IsEarlier)
            .Select(finding => new StandingFinding
            {
                Kind = StandingKind.OfCase,
                Severity = finding.Severity,
                Since = finding.Date ?? injury.LastExamination ?? today,
                Next =
                    finding.Kind == FindingKind.UncertainLink ? StandingStep.SettleLink
                    : IsAnswered(finding.Kind) && permit.Source is not null ? StandingStep.Decide
                    : StandingStep.LookAtCase,
                CaseId = injury.CaseId,
                OfCase = finding,
                // How the lesion heals is held against the work that it bears.
                Step = IsSlow(finding.Kind) ? permit.Source?.StepName : null,
                Week = IsSlow(finding.Kind) ? permit.Source?.Place.Week + 1 : null,
                Weight = IsSlow(finding.Kind) ? 0 : (int)Math.Round(Math.Abs(finding.ChangePercent ?? 0), MidpointRounding.AwayFromZero),
            });

    /// <summary>Whether a vet answers it with a decision on the work.</summary>
    private static bool IsAnswered(FindingKind kind) =>
        kind
            is FindingKind.Worsening
                or FindingKind.NoProgress
                or FindingKind.HealingSlowly
                or FindingKind.NewLesionLevel
                or FindingKind.NewlyAbnormalLevel
                or FindingKind.LigamentAreaRise;

    private static bool IsSlow(FindingKind kind) => kind is FindingKind.NoProgress or FindingKind.HealingSlowly;

    private static IEnumerable<StandingFinding> Rechecks(WatchedHorse horse, Permit permit, DateOnly today, WatchSettings settings)
    {
        bool isGateMissed =
            permit is { Due: { } gate, IsGateDue: true }
            && gate < today
            && !new CaseBook(horse.History.Entries).AreExamined(gate, today, long.MaxValue);
        if (isGateMissed)
        {
            int days = today.DayNumber - permit.Due!.Value.DayNumber;
            yield return new StandingFinding
            {
                Kind = StandingKind.GateNotExamined,
                Severity = permit.GraceEnds < today ? FindingSeverity.Red : FindingSeverity.Amber,
                Since = permit.Due.Value,
                Next = StandingStep.Examine,
                Days = days,
                Until = permit.GraceEnds,
                Step = permit.Source?.StepName,
                Weight = days / settings.WaitDays,
            };
        }

        foreach (WatchedCase injury in horse.Cases)
        {
            // The gate speaks for the rechecks that it sets.
            if (
                injury.Due is { State: RecheckState.Overdue, DueDate: { } due, DaysLeft: { } left }
                && !(isGateMissed && (injury.Due.By == DueBy.Gate || due == permit.Due))
            )
            {
                yield return new StandingFinding
                {
                    Kind = StandingKind.RecheckOverdue,
                    Severity = FindingSeverity.Amber,
                    Since = due,
                    Next = StandingStep.Book,
                    CaseId = injury.CaseId,
                    Days = -left,
                    Weight = -left / settings.WaitDays,
                };
            }
        }
    }

    private static IEnumerable<StandingFinding> OfExercise(WatchedHorse horse, Permit permit, DateOnly today, WatchSettings settings)
    {
        long signed = horse
            .History.Entries.Where(entry => !entry.IsImported && entry is PlanSigned or DecisionSigned)
            .Select(entry => entry.Order)
            .DefaultIfEmpty(long.MinValue)
            .Max();
        bool hasLine = permit.State is not (PermitState.NothingSigned or PermitState.Closed);
        if (Concerns(horse, signed, hasLine) is { } concerns)
        {
            yield return concerns;
        }

        if (!hasLine)
        {
            yield break;
        }

        foreach (PermitReason reason in permit.Reasons)
        {
            if (OfReason(reason, permit, today, settings) is { } finding)
            {
                yield return finding;
            }
        }

        if (TooMuch(horse, signed, today, settings) is { } over)
        {
            yield return over;
        }
    }

    private static StandingFinding? Concerns(WatchedHorse horse, long signed, bool hasLine)
    {
        DateOnly[] open =
        [
            .. horse
                .History.Entries.Where(entry => entry.Order > signed && (hasLine || !entry.IsImported))
                .Select(entry =>
                    entry switch
                    {
                        ConcernOpened concern => concern.Date,
                        DayLogged { Log.HasSign: true } logged => logged.Log.Date,
                        _ => (DateOnly?)null,
                    }
                )
                .OfType<DateOnly>(),
        ];
        return open.Length == 0
            ? null
            : new StandingFinding
            {
                Kind = StandingKind.ConcernOpen,
                Severity = FindingSeverity.Red,
                Since = open.Min(),
                // Without a line there is nothing that a decision could lower.
                Next = hasLine ? StandingStep.Decide : StandingStep.CallYard,
                Count = open.Length,
                Weight = open.Length,
            };
    }

    /// <summary>What the permit itself names, so that its days are counted in one place.</summary>
    private static StandingFinding? OfReason(PermitReason reason, Permit permit, DateOnly today, WatchSettings settings)
    {
        DateOnly since = reason.Since ?? today;
        int days = today.DayNumber - since.DayNumber;
        StandingFinding? Finding(StandingKind kind, FindingSeverity severity, StandingStep next, int weight = 0) =>
            new()
            {
                Kind = kind,
                Severity = severity,
                Since = since,
                Next = next,
                Days = days,
                Weight = weight,
            };

        return reason.Code switch
        {
            PermitReasonCode.UnsignedSetback => Finding(StandingKind.UnsignedSetback, FindingSeverity.Red, StandingStep.Examine),
            PermitReasonCode.BasisChanged => Finding(StandingKind.BasisChanged, FindingSeverity.Amber, StandingStep.Decide),
            PermitReasonCode.VetWithdrawn => Finding(StandingKind.VetWithdrawn, FindingSeverity.Red, StandingStep.Decide),
            PermitReasonCode.NoLog when permit.BeforeWeek.HasOuting => Finding(
                StandingKind.NoLog,
                FindingSeverity.Amber,
                StandingStep.CallYard,
                days / settings.WaitDays
            ),
            // Where a vet has stopped or paused the work, nobody is asked where the horse is.
            PermitReasonCode.AwayTooLong when permit.State is not (PermitState.Stopped or PermitState.Paused) => Finding(
                StandingKind.AwayTooLong,
                FindingSeverity.Amber,
                StandingStep.CallYard,
                days / settings.WaitDays
            ),
            _ => null,
        };
    }

    /// <summary>Too much work on the days of the setting, as far as no vet has signed since it was entered.</summary>
    private static StandingFinding? TooMuch(WatchedHorse horse, long signed, DateOnly today, WatchSettings settings)
    {
        DateOnly from = today.AddDays(1 - settings.OverBackDays);
        DayLog[] logs =
        [
            .. horse
                .History.Entries.OfType<DayLogged>()
                .Where(entry => entry.Order > signed && entry.Log.Date >= from && entry.Log.Date <= today)
                .Select(entry => entry.Log),
        ];
        if (logs.Length == 0)
        {
            return null;
        }

        DayAdherence[] over =
        [
            .. AdherenceReader
                .ByWeek(logs, AdherenceReader.Permitted(horse.History, horse.Shown, from, today), from, today)
                .SelectMany(week => week.Days)
                .Where(day => IsTooMuch(day, settings)),
        ];
        if (over.Length == 0)
        {
            return null;
        }

        int minutes = over.Sum(day => day.Beyond.Total);
        return new StandingFinding
        {
            Kind = StandingKind.OverExercise,
            Severity = over.Length >= settings.OverRedDays ? FindingSeverity.Red : FindingSeverity.Amber,
            // A later day is a new occurrence; an earlier one that falls out of sight is not.
            Since = over[^1].Date,
            Until = over[0].Date,
            Next = StandingStep.CallYard,
            Days = over.Length,
            Minutes = minutes,
            Over = [.. over.SelectMany(day => day.Over).Distinct().Order()],
            Weight = minutes,
        };
    }

    /// <summary>More minutes than the line, or any other respect: a horse that is ridden before it may be is too much at once.</summary>
    private static bool IsTooMuch(DayAdherence day, WatchSettings settings) =>
        day.Over.Any(kind => kind != OverKind.Minutes)
        || (
            day.Beyond.Total > 0
            && day.Beyond.Total >= settings.OverMinutes
            && 100L * day.Beyond.Total >= (long)settings.OverPercent * (day.Permitted?.Total ?? 0)
        );
}
