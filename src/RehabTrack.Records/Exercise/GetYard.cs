using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Anatomy;
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
        var horses = await beside
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
            .Select(horse => new
            {
                horse.Id,
                horse.Name,
                horse.Markings,
                HasPhoto = horse.PhotoId != null,
                Yard = records.Yards.Where(yard => yard.Id == horse.YardId).Select(yard => yard.Name).FirstOrDefault(),
            })
            .ToListAsync(cancellation);
        bool forOwner = session.Person.Role == Role.Owner;
        Guid[] ids = [.. horses.Select(horse => horse.Id)];
        ILookup<Guid, ExerciseEntryRecord> lines = await ExerciseRows.OutsideLinesAsync(records, ids, cancellation);
        IReadOnlyDictionary<Guid, PermitHistory> histories = await ExerciseRows.HistoriesAsync(session, ids, lines, cancellation);
        ILookup<Guid, ReleaseRows.Row> released = await ReleaseRows.OfHorsesAsync(records, ids, forOwner, cancellation);
        ILookup<Guid, ConcernRecord> concerns = (
            await records.Concerns.AsNoTracking().Where(concern => ids.Contains(concern.HorseId)).ToListAsync(cancellation)
        ).ToLookup(concern => concern.HorseId);
        ILookup<Guid, OpenInjury> cases = (
            await ExerciseRows
                .OpenCases(records)
                .Where(injury => ids.Contains(injury.HorseId))
                .Select(injury => new OpenInjury(
                    injury.Id,
                    injury.HorseId,
                    injury.Limb,
                    injury.RecheckIntervalDays,
                    records.CaseSummaries.Any(summary => summary.CaseId == injury.Id && summary.ExaminationCount > 0),
                    records.CaseSummaries.Where(summary => summary.CaseId == injury.Id).Max(summary => summary.LastSigned)
                ))
                .ToListAsync(cancellation)
        ).ToLookup(injury => injury.HorseId);
        Guid[] caseIds = [.. cases.SelectMany(ofHorse => ofHorse).Select(injury => injury.Id)];
        ILookup<Guid, Booked> bookings = (
            await BookingRows
                .Standing(records)
                .Where(booking => caseIds.Contains(booking.CaseId) && booking.Date >= session.Today)
                .Select(booking => new Booked(booking.CaseId, booking.Date, booking.Time))
                .ToListAsync(cancellation)
        ).ToLookup(booking => booking.CaseId);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            concerns.SelectMany(group => group).Select(concern => concern.SeenById),
            cancellation
        );
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
                    HasPhoto = horse.HasPhoto,
                    Yard = horse.Yard,
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
                    Recheck = Recheck(session, cases[horse.Id], histories[horse.Id], bookings),
                };
            })
            .ToList();
    }

    private static YardRecheck? Recheck(
        RecordsSession session,
        IEnumerable<OpenInjury> cases,
        PermitHistory history,
        ILookup<Guid, Booked> bookings
    )
    {
        SignedRecheck signed = SignedRechecks.Of(history, session.Today);
        return cases
            .Select(injury =>
                bookings[injury.Id].OrderBy(booking => booking.Date).ThenBy(booking => booking.Time).FirstOrDefault() is { } booked
                    ? new YardRecheck(booked.Date, booked.Time, true)
                : injury.IsExamined && DueDates.Of(injury.RecheckIntervalDays, injury.LastSigned, session, signed).DueDate is { } due
                    ? new YardRecheck(due, null, false)
                : null
            )
            .OfType<YardRecheck>()
            .OrderBy(recheck => recheck.Date)
            .ThenBy(recheck => recheck.Time)
            .FirstOrDefault();
    }

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

    private sealed record OpenInjury(Guid Id, Guid HorseId, Limb Limb, int? RecheckIntervalDays, bool IsExamined, DateOnly? LastSigned);

    private sealed record Booked(Guid CaseId, DateOnly Date, TimeOnly? Time);
}
