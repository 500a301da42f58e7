using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Watch;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Watch;

/// <summary>Reads what stands, and who acknowledged it.</summary>
internal static class WatchRows
{
    /// <summary>What stands of a case and of its horse; the case is analysed anew, so that nothing is left out.</summary>
    public static async Task<IReadOnlyList<StandingFinding>> OfCaseAsync(
        RecordsSession session,
        CaseRecord injury,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        (CaseCourse course, IReadOnlyList<LinkConstraint> words) = await CaseRows.StandingAsync(
            records,
            injury,
            session.Today,
            cancellation
        );
        Examination[] read = [.. course.Examinations.Where(examination => examination.Date <= session.Today)];
        Examination[] signed = [.. read.Where(examination => examination.State == ExaminationState.Signed)];
        WatchedCase watched = new(
            RecordText.Of(injury.Id),
            CaseAnalyser.Analyse(course, words, SettingsStore.Of(session.Practice), session.Today).Findings,
            read.Length == 0 ? null : read.Max(examination => examination.Date),
            DueDates.Of(
                injury.RecheckIntervalDays,
                signed.Length == 0 ? null : signed.Max(examination => examination.Date),
                session,
                await SignedRechecks.OfHorseAsync(session, injury.HorseId, cancellation)
            )
        );
        IReadOnlyDictionary<Guid, WatchedHorse> horses = await HorsesAsync(
            session,
            [injury.HorseId],
            new[] { (injury.HorseId, watched) }.ToLookup(one => one.HorseId, one => one.watched),
            cancellation
        );
        return StandingReader.Of(horses[injury.HorseId], session.Today);
    }

    /// <summary>Horses as they are watched, each with its cases.</summary>
    public static async Task<IReadOnlyDictionary<Guid, WatchedHorse>> HorsesAsync(
        RecordsSession session,
        Guid[] horseIds,
        ILookup<Guid, WatchedCase> cases,
        CancellationToken cancellation
    )
    {
        // Most horses of a large list have no line of exercise.
        ILookup<Guid, ExerciseEntryRecord> lines = await ExerciseRows.LinesAsync(session.Records, horseIds, cancellation);
        Guid[] atWork = [.. lines.Select(ofHorse => ofHorse.Key)];
        IReadOnlyDictionary<Guid, PermitHistory> histories = await ExerciseRows.HistoriesAsync(session, atWork, lines, cancellation);
        return horseIds.ToDictionary(
            id => id,
            id => new WatchedHorse
            {
                Cases = [.. cases[id]],
                History = histories.GetValueOrDefault(id, PermitHistory.Empty),
                Shown =
                [
                    .. lines[id]
                        .Where(line => line.Kind == ExerciseEntryKind.DayLogged)
                        .Select(line => (line.Date, ExerciseRows.WordsOf(line)?.Permitted))
                        .Where(day => day.Permitted is not null)
                        .Select(day => KeyValuePair.Create(day.Date, day.Permitted!)),
                ],
            }
        );
    }

    /// <summary>Puts beside what stands who has acknowledged it, by horse.</summary>
    public static async Task<ILookup<Guid, (Acknowledged What, Acknowledgement Who)>> AcknowledgedAsync(
        RecordsSession session,
        Guid[] horseIds,
        CancellationToken cancellation
    )
    {
        List<AcknowledgementRecord> said = await session
            .Records.Acknowledgements.AsNoTracking()
            .Where(record => horseIds.Contains(record.HorseId))
            .OrderBy(record => record.SaidAt)
            .ThenBy(record => record.Id)
            .ToListAsync(cancellation);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            session.Records,
            said.Select(record => (Guid?)record.SaidById),
            cancellation
        );
        return said.ToLookup(
            record => record.HorseId,
            record =>
                (
                    new Acknowledged(record.FindingKey, record.Severity, record.Weight),
                    new Acknowledgement(PersonNames.Name(names, record.SaidById) ?? "", record.SaidAt, record.Reason)
                )
        );
    }

    /// <summary>What stands with the latest acknowledgement that covers it.</summary>
    public static WatchedFinding Watch(StandingFinding finding, IEnumerable<(Acknowledged What, Acknowledgement Who)> said) =>
        new(finding, said.LastOrDefault(one => finding.IsCoveredBy(one.What)).Who);
}
