using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>
/// What is permitted today for the horses that a person stands beside, and what was released of them. A horse whose case was closed stays
/// for a time with the word that no work is signed, because one that is gone from the page is worked by an older sheet; a horse that left or
/// died does not. Only fields that are meant for the reader.
/// </summary>
public sealed class GetYard(RecordsAccess access) : UseCase<NoInput, IReadOnlyList<YardHorse>>(access)
{
    private protected override Right Right => Right.SeePermits;

    private protected override async Task<Outcome<IReadOnlyList<YardHorse>>> RunAsync(
        RecordsSession session,
        NoInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        IQueryable<HorseRecord> beside = records.Horses.AsNoTracking().Where(horse => horse.ArchivedAt == null);
        if (session.Reach == Reach.OwnHorses)
        {
            beside = HorsePeople.Own(session, beside);
        }

        DateTime closedSince = session.Now.AddDays(-new PermitSettings().ClosedDays);
        List<HorseRecord> horses = await beside
            .Where(horse =>
                ExerciseRows.OpenCases(records).Any(injury => injury.HorseId == horse.Id)
                || records.Cases.Any(injury =>
                    injury.HorseId == horse.Id
                    && injury.ArchivedAt == null
                    && injury.ClosedAt >= closedSince
                    && (injury.End == null || injury.End == CaseEnd.Retired || injury.End == CaseEnd.Resolved)
                )
            )
            .OrderBy(horse => horse.FoldedName)
            .ThenBy(horse => horse.Id)
            .ToListAsync(cancellation);
        Guid[] ids = [.. horses.Select(horse => horse.Id)];
        ILookup<Guid, ExerciseEntryRecord> lines = await ExerciseRows.LinesAsync(records, ids, cancellation);
        IReadOnlyDictionary<Guid, PermitHistory> histories = await ExerciseRows.HistoriesAsync(session, ids, lines, cancellation);
        ILookup<Guid, ReleaseRows.Row> released = await ReleaseRows.OfHorsesAsync(records, ids, cancellation);
        ILookup<Guid, ConcernRecord> concerns = (
            await records.Concerns.AsNoTracking().Where(concern => ids.Contains(concern.HorseId)).ToListAsync(cancellation)
        ).ToLookup(concern => concern.HorseId);
        ILookup<Guid, CaseRow> cases = await CaseRowQueries.OfHorsesAsync(session, ids, onlyOpen: true, cancellation);
        Guid[] caseIds = [.. cases.SelectMany(ofHorse => ofHorse).Select(injury => injury.Id)];
        ILookup<Guid, BookingRecord> bookings = (
            await BookingRows
                .Standing(records)
                .AsNoTracking()
                .Where(booking => caseIds.Contains(booking.CaseId) && booking.Date >= session.Today)
                .ToListAsync(cancellation)
        ).ToLookup(booking => booking.CaseId);
        Dictionary<Guid, string> yards = await records.Yards.ToDictionaryAsync(yard => yard.Id, yard => yard.Name, cancellation);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            concerns.SelectMany(group => group).Select(concern => concern.SeenById),
            cancellation
        );
        bool forOwner = session.Person.Role == Role.Owner;
        return horses
            .Select(horse =>
            {
                Permit permit = PermitReader.For(histories[horse.Id], session.Today);
                OpenConcern? concern = Unanswered(lines[horse.Id], concerns[horse.Id], names);
                return new YardHorse
                {
                    Id = horse.Id,
                    Name = horse.Name,
                    Markings = horse.Markings,
                    Limbs = [.. cases[horse.Id].OrderBy(injury => injury.Id).Select(injury => injury.Limb).Distinct()],
                    HasPhoto = horse.PhotoId is not null,
                    Yard = horse.YardId is { } yard ? yards.GetValueOrDefault(yard) : null,
                    Permit = permit,
                    LoggedToday =
                    [
                        .. lines[horse.Id]
                            .Where(line => line.Kind == ExerciseEntryKind.DayLogged && line.Date == session.Today)
                            .Select(line => ((DayLogged)ExerciseRows.Read(line, line.Number)).Log),
                    ],
                    Concern = concern,
                    Release = ReleaseRows.Standing(
                        session,
                        released[horse.Id],
                        lines[horse.Id],
                        histories[horse.Id],
                        permit,
                        concern is not null,
                        forOwner
                    ),
                    Recheck = Recheck(cases[horse.Id], bookings),
                };
            })
            .ToList();
    }

    private static YardRecheck? Recheck(IEnumerable<CaseRow> cases, ILookup<Guid, BookingRecord> bookings) =>
        cases
            .Select(injury =>
                bookings[injury.Id].OrderBy(booking => booking.Date).ThenBy(booking => booking.Time).FirstOrDefault() is { } booked
                    ? new YardRecheck(booked.Date, booked.Time, true)
                : injury.Summary?.DueOn is { } due ? new YardRecheck(due, null, false)
                : null
            )
            .OfType<YardRecheck>()
            .OrderBy(recheck => recheck.Date)
            .ThenBy(recheck => recheck.Time)
            .FirstOrDefault();

    private static OpenConcern? Unanswered(
        IEnumerable<ExerciseEntryRecord> lines,
        IEnumerable<ConcernRecord> concerns,
        IReadOnlyDictionary<Guid, string> names
    )
    {
        Dictionary<Guid, int> numbers = lines.ToDictionary(line => line.Id, line => line.Number);
        int signed = ExerciseRows.LastSignature(lines)?.Number ?? 0;
        ConcernRecord? open = ExerciseRows
            .Beside(concerns, concern => concern.EntryId, lines)
            .Where(concern => numbers[concern.EntryId] > signed)
            .MaxBy(concern => numbers[concern.EntryId]);
        return open is null ? null : new OpenConcern(open.OpenedAt, PersonNames.Name(names, open.SeenById), open.SeenAt);
    }
}
