using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>Reads and adds lines of exercise histories, and makes of them what the heart takes.</summary>
internal static class ExerciseRows
{
    /// <summary>The horse, when it is there and within the reach of who asks; null otherwise.</summary>
    public static async Task<HorseRecord?> HorseAsync(RecordsSession session, Guid horseId, CancellationToken cancellation)
    {
        IQueryable<HorseRecord> horses = session
            .Records.Horses.AsNoTracking()
            .Where(horse => horse.Id == horseId && horse.ArchivedAt == null);
        if (session.Reach == Reach.OwnHorses)
        {
            horses = HorsePeople.Own(session, horses);
        }

        return await horses.FirstOrDefaultAsync(cancellation);
    }

    /// <summary>The cases that are open: only with one of them is there anything to sign, to log or to permit.</summary>
    public static IQueryable<CaseRecord> OpenCases(RecordsContext records) =>
        records.Cases.Where(injury => injury.ClosedAt == null && injury.ArchivedAt == null);

    /// <summary>Whether a horse has an open case.</summary>
    public static Task<bool> HasOpenCaseAsync(RecordsContext records, Guid horseId, CancellationToken cancellation) =>
        OpenCases(records).AnyAsync(injury => injury.HorseId == horseId, cancellation);

    /// <summary>The vet's last signature, under a plan or a decision; null when nothing was signed. What came before it is answered.</summary>
    public static ExerciseEntryRecord? LastSignature(IEnumerable<ExerciseEntryRecord> lines) =>
        lines.LastOrDefault(line => line.Kind is ExerciseEntryKind.DecisionSigned or ExerciseEntryKind.PlanSigned);

    /// <summary>
    /// The rows that stand beside the lines that were read. A line that somebody adds between two readings brings its decision or concern
    /// along with the next look, never without itself.
    /// </summary>
    public static IEnumerable<T> Beside<T>(IEnumerable<T> rows, Func<T, Guid> entryId, IEnumerable<ExerciseEntryRecord> lines)
    {
        HashSet<Guid> read = [.. lines.Select(line => line.Id)];
        return rows.Where(row => read.Contains(entryId(row)));
    }

    /// <summary>The signatures, under plans and decisions.</summary>
    public static IQueryable<ExerciseEntryRecord> Signatures(RecordsContext records) =>
        records
            .ExerciseEntries.AsNoTracking()
            .Where(line => line.Kind == ExerciseEntryKind.DecisionSigned || line.Kind == ExerciseEntryKind.PlanSigned);

    /// <summary>The lines of some horses, in the order in which they were recorded.</summary>
    public static Task<ILookup<Guid, ExerciseEntryRecord>> LinesAsync(
        RecordsContext records,
        Guid[] horseIds,
        CancellationToken cancellation
    ) => InOrderAsync(records.ExerciseEntries, horseIds, cancellation);

    /// <summary>
    /// The same for a reader from outside: what permits follow from, without what was said beside a line and for whom, a vet's reasons, the
    /// words beside a step and at its gate. These stay in the database.
    /// </summary>
    public static Task<ILookup<Guid, ExerciseEntryRecord>> OutsideLinesAsync(
        RecordsContext records,
        Guid[] horseIds,
        CancellationToken cancellation
    ) => InOrderAsync(records.ExerciseEntries.ForOutside(), horseIds, cancellation);

    /// <summary>
    /// All that permits of some horses follow from: their lines, and their cases and signed examinations, each at the moment it was
    /// recorded.
    /// </summary>
    public static Task<IReadOnlyDictionary<Guid, PermitHistory>> HistoriesAsync(
        RecordsSession session,
        Guid[] horseIds,
        ILookup<Guid, ExerciseEntryRecord> lines,
        CancellationToken cancellation
    ) => HistoriesAsync(session.Records, session.Practice.TimeZone, horseIds, lines, cancellation);

    /// <summary>The same, for steps that have no person.</summary>
    public static async Task<IReadOnlyDictionary<Guid, PermitHistory>> HistoriesAsync(
        RecordsContext records,
        string timeZone,
        Guid[] horseIds,
        ILookup<Guid, ExerciseEntryRecord> lines,
        CancellationToken cancellation
    )
    {
        ILookup<Guid, CaseSpan> cases = (
            await records
                .Cases.Where(injury => horseIds.Contains(injury.HorseId))
                .Select(injury => new CaseSpan(injury.Id, injury.HorseId, injury.ClosedAt ?? injury.ArchivedAt))
                .ToListAsync(cancellation)
        ).ToLookup(injury => injury.HorseId);
        Guid[] caseIds = [.. cases.SelectMany(group => group).Select(injury => injury.Id)];
        ILookup<Guid, SignedRow> examinations = (
            await records
                .Examinations.AsNoTracking()
                .Where(examination =>
                    caseIds.Contains(examination.CaseId)
                    && examination.State == ExaminationState.Signed
                    && examination.SignedAt != null
                    && examination.ArchivedAt == null
                )
                .Select(examination => new SignedRow(examination.Id, examination.CaseId, examination.Date, examination.SignedAt!.Value))
                .ToListAsync(cancellation)
        ).ToLookup(examination => examination.CaseId);
        return horseIds.ToDictionary(
            id => id,
            id => Of(lines[id], cases[id], [.. cases[id].SelectMany(injury => examinations[injury.Id])], timeZone)
        );
    }

    /// <summary>Adds a line after the last that is there; its number makes sure that nobody else wrote one in between.</summary>
    public static async Task<ExerciseEntryRecord> AppendAsync(
        RecordsSession session,
        Guid horseId,
        PermitEntry entry,
        string? onBehalfOf,
        LogWords words,
        CancellationToken cancellation
    )
    {
        int last =
            await session.Records.ExerciseEntries.Where(line => line.HorseId == horseId).MaxAsync(line => (int?)line.Number, cancellation)
            ?? 0;
        return Add(session, horseId, last + 1, entry, onBehalfOf, words);
    }

    /// <summary>Adds a line; its number makes sure that nobody else wrote one in between.</summary>
    public static ExerciseEntryRecord Add(
        RecordsSession session,
        Guid horseId,
        int number,
        PermitEntry entry,
        string? onBehalfOf = null,
        object? more = null
    )
    {
        (ExerciseEntryKind kind, DateOnly date) = KindOf(entry);
        ExerciseEntryRecord record = new()
        {
            Id = session.NewId(),
            HorseId = horseId,
            Number = number,
            Kind = kind,
            Date = date,
            RecordedAt = session.Now,
            RecordedOn = session.Today,
            EnteredById = session.Person.Id,
            OnBehalfOf = onBehalfOf,
            ContentJson = JsonSerializer.Serialize(entry, entry.GetType(), RecordJson.Options),
            MoreJson = more is null ? null : JsonSerializer.Serialize(more, more.GetType(), RecordJson.Options),
        };
        session.Records.ExerciseEntries.Add(record);
        return record;
    }

    /// <summary>A line as the heart reads it.</summary>
    public static PermitEntry Read(ExerciseEntryRecord record, long order) =>
        Content(record) with
        {
            Order = order,
            RecordedOn = record.RecordedOn,
        };

    /// <summary>A line with who wrote it and what was said.</summary>
    public static ExerciseLine Tell(ExerciseEntryRecord line, IReadOnlyDictionary<Guid, string> names) =>
        new()
        {
            Id = line.Id,
            Number = line.Number,
            Entry = Read(line, line.Number),
            Date = line.Date,
            RecordedAt = line.RecordedAt,
            EnteredBy = PersonNames.Name(names, line.EnteredById) ?? "",
            OnBehalfOf = line.OnBehalfOf,
            Words = WordsOf(line),
        };

    /// <summary>What was said beside a line, and what the person was shown; null where nothing was kept.</summary>
    public static LogWords? WordsOf(ExerciseEntryRecord line) =>
        line.MoreJson is { } json ? JsonSerializer.Deserialize<LogWords>(json, RecordJson.Options) : null;

    private static async Task<ILookup<Guid, ExerciseEntryRecord>> InOrderAsync(
        IQueryable<ExerciseEntryRecord> lines,
        Guid[] horseIds,
        CancellationToken cancellation
    ) =>
        (
            await lines
                .AsNoTracking()
                .Where(entry => horseIds.Contains(entry.HorseId))
                .OrderBy(entry => entry.Number)
                .ToListAsync(cancellation)
        ).ToLookup(entry => entry.HorseId);

    private static PermitHistory Of(
        IEnumerable<ExerciseEntryRecord> lines,
        IEnumerable<CaseSpan> cases,
        IReadOnlyList<SignedRow> examinations,
        string timeZone
    )
    {
        List<Moment> moments = [];
        foreach (CaseSpan injury in cases)
        {
            string id = RecordText.Of(injury.Id);
            DateTime opened = NewId.InstantOf(injury.Id);
            DateOnly openedOn = PracticeTime.DateOf(opened, timeZone);
            moments.Add(
                new(
                    opened,
                    0,
                    order => new CaseOpened
                    {
                        Order = order,
                        RecordedOn = openedOn,
                        CaseId = id,
                        Date = openedOn,
                    }
                )
            );
            if (injury.Ended is { } closed)
            {
                DateOnly closedOn = PracticeTime.DateOf(closed, timeZone);
                moments.Add(
                    new(
                        closed,
                        3,
                        order => new CaseClosed
                        {
                            Order = order,
                            RecordedOn = closedOn,
                            CaseId = id,
                            Date = closedOn,
                        }
                    )
                );
            }
        }

        foreach (SignedRow examination in examinations)
        {
            DateOnly signedOn = PracticeTime.DateOf(examination.SignedAt, timeZone);
            moments.Add(
                new(
                    examination.SignedAt,
                    1,
                    order => new ExaminationSigned
                    {
                        Order = order,
                        RecordedOn = signedOn,
                        CaseId = RecordText.Of(examination.CaseId),
                        Date = examination.Date,
                    }
                )
            );
        }

        // A clock that was set back must not turn the order of the lines.
        DateTime latest = DateTime.MinValue;
        foreach (ExerciseEntryRecord line in lines)
        {
            latest = line.RecordedAt > latest ? line.RecordedAt : latest;
            moments.Add(new(latest, 2, order => Read(line, order)));
        }

        return new PermitHistory([
            .. moments.OrderBy(moment => moment.At).ThenBy(moment => moment.Rank).Select((moment, index) => moment.Entry(index + 1)),
        ]);
    }

    private static PermitEntry Content(ExerciseEntryRecord record)
    {
        T Of<T>()
            where T : PermitEntry => JsonSerializer.Deserialize<T>(record.ContentJson, RecordJson.Options)!;

        return record.Kind switch
        {
            ExerciseEntryKind.PlanSigned => Of<PlanSigned>(),
            ExerciseEntryKind.DecisionSigned => Of<DecisionSigned>(),
            ExerciseEntryKind.DayLogged => Of<DayLogged>(),
            ExerciseEntryKind.ConcernOpened => Of<ConcernOpened>(),
            ExerciseEntryKind.WorkLowered => Of<WorkLowered>(),
            ExerciseEntryKind.WorkPaused => Of<WorkPaused>(),
            ExerciseEntryKind.HoldPlaced => Of<HoldPlaced>(),
            ExerciseEntryKind.HoldEnded => Of<HoldEnded>(),
        };
    }

    private static (ExerciseEntryKind Kind, DateOnly Date) KindOf(PermitEntry entry) =>
        entry switch
        {
            PlanSigned signed => (ExerciseEntryKind.PlanSigned, signed.From),
            DecisionSigned signed => (ExerciseEntryKind.DecisionSigned, signed.Decision.From),
            DayLogged logged => (ExerciseEntryKind.DayLogged, logged.Log.Date),
            ConcernOpened concern => (ExerciseEntryKind.ConcernOpened, concern.Date),
            WorkLowered lowered => (ExerciseEntryKind.WorkLowered, lowered.From),
            WorkPaused paused => (ExerciseEntryKind.WorkPaused, paused.From),
            HoldPlaced hold => (ExerciseEntryKind.HoldPlaced, hold.From),
            HoldEnded end => (ExerciseEntryKind.HoldEnded, end.From),
            _ => throw new InvalidOperationException($"Cases and examinations tell of themselves: {entry.GetType().Name}."),
        };

    private sealed record CaseSpan(Guid Id, Guid HorseId, DateTime? Ended);

    private sealed record SignedRow(Guid Id, Guid CaseId, DateOnly Date, DateTime SignedAt);

    private sealed record Moment(DateTime At, int Rank, Func<long, PermitEntry> Entry);
}
