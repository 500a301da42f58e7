using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Bookings;

/// <summary>Reads the recheck board: the open cases with something to be done, booked or done lately. Imported history reminds of nothing.</summary>
public sealed class GetBoard(RecordsAccess access) : UseCase<BoardInput, BoardView>(access)
{
    private protected override Right Right => Right.SeeCases;

    private protected override async Task<Outcome<BoardView>> RunAsync(
        RecordsSession session,
        BoardInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        PracticeRecord practice = session.Practice;
        DateOnly today = session.Today;
        ScheduleSettings usual = DueDates.Settings(practice);
        IReadOnlyDictionary<Guid, SignedRecheck> signed = await SignedRechecks.OfPracticeAsync(session, cancellation);
        Guid[] signedFor = [.. signed.Keys];
        DateOnly soon = today.AddDays(usual.SoonDays - usual.IntervalDays);
        DateOnly lately = today.AddDays(-usual.DoneDays);
        var cases = await (
            from injury in records.Cases.AsNoTracking()
            join horse in records.Horses on injury.HorseId equals horse.Id
            join kept in records.CaseSummaries on injury.Id equals kept.CaseId into summaries
            from summary in summaries.DefaultIfEmpty()
            join stands in records.Yards on horse.YardId equals stands.Id into yards
            from yard in yards.DefaultIfEmpty()
            where
                injury.ArchivedAt == null
                && injury.ClosedAt == null
                && horse.ArchivedAt == null
                && (
                    injury.Id == input.CaseId
                    || injury.RecheckIntervalDays != null
                    || signedFor.Contains(injury.HorseId)
                    || summary.LastSigned <= soon
                    || summary.LastSigned >= lately
                    || records.Bookings.Any(booking =>
                        booking.CaseId == injury.Id
                        && booking.CancelledAt == null
                        && booking.ArchivedAt == null
                        && (summary.LastSigned == null || booking.Date >= summary.LastSigned)
                    )
                )
            select new
            {
                Case = injury,
                HorseName = horse.Name,
                horse.FoldedName,
                Yard = yard,
                LastSigned = summary == null ? null : summary.LastSigned,
            }
        ).ToArrayAsync(cancellation);
        Guid[] caseIds = [.. cases.Select(row => row.Case.Id)];
        Dictionary<Guid, BookingRecord> bookings = (
            await BookingRows
                .Standing(records)
                .AsNoTracking()
                .Where(booking => caseIds.Contains(booking.CaseId))
                .OrderBy(booking => booking.Id)
                .ToArrayAsync(cancellation)
        )
            .GroupBy(booking => booking.CaseId)
            .ToDictionary(ofCase => ofCase.Key, ofCase => ofCase.Last());
        Dictionary<Guid, DateOnly> drafts = await records
            .Examinations.Where(examination =>
                caseIds.Contains(examination.CaseId)
                && examination.State == ExaminationState.Draft
                && examination.ArchivedAt == null
                && examination.Date <= today
            )
            .GroupBy(examination => examination.CaseId)
            .ToDictionaryAsync(ofCase => ofCase.Key, ofCase => ofCase.Max(examination => examination.Date), cancellation);
        Dictionary<Guid, CallRecord> calls = (
            await records
                .Calls.AsNoTracking()
                .Where(call => caseIds.Contains(call.CaseId) && call.ArchivedAt == null)
                .OrderBy(call => call.Id)
                .ToArrayAsync(cancellation)
        )
            .GroupBy(call => call.CaseId)
            .ToDictionary(ofCase => ofCase.Key, ofCase => ofCase.Last());
        ILookup<Guid, HorsePersonView> people = await HorsePeople.OfHorsesAsync(
            records,
            [.. cases.Select(row => row.Case.HorseId).Distinct()],
            cancellation
        );
        CoverView[] covers = await CoverRows.FromAsync(records, today, cancellation);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            [
                .. cases.Select(row => row.Case.ResponsibleVetId),
                .. bookings.Values.Select(booking => booking.VetId),
                .. calls.Values.SelectMany(call => new Guid?[] { call.PersonId, call.NotedById }),
            ],
            cancellation
        );
        Dictionary<string, (string Horse, TimeOnly? Time)> visits = cases
            .Where(row => bookings.ContainsKey(row.Case.Id))
            .ToDictionary(row => RecordText.Of(bookings[row.Case.Id].Id), row => (row.HorseName, bookings[row.Case.Id].Time));
        ILookup<DateOnly, BookedVisit> booked = bookings.Values.Select(BookingRows.ToVisit).ToLookup(visit => visit.Date);
        return new BoardView
        {
            PracticeName = practice.Name,
            PracticePhone = practice.Phone,
            Today = today,
            TimeZone = practice.TimeZone,
            IntervalDays = usual.IntervalDays,
            VisitMinutes = usual.VisitMinutes,
            Rows =
            [
                .. cases
                    .Select(row =>
                    {
                        CaseRecord injury = row.Case;
                        SignedRecheck recheck = signed.GetValueOrDefault(injury.HorseId, SignedRecheck.None);
                        ScheduleSettings settings = DueDates.Settings(practice, injury.RecheckIntervalDays, recheck.IntervalDays);
                        RecheckDue due = DueDates.Of(injury.RecheckIntervalDays, row.LastSigned, session, recheck);
                        BookingRecord? booking = bookings.GetValueOrDefault(injury.Id);
                        RecheckStanding standing = RecheckBoard.Of(
                            due,
                            booking is null ? null : BookingRows.Of(booking),
                            row.LastSigned,
                            drafts.TryGetValue(injury.Id, out DateOnly draft) ? draft : null,
                            settings,
                            today
                        );
                        BookingRecord? open =
                            booking is not null && BookingRows.Of(booking).IsServedBy(row.LastSigned, settings) ? null : booking;
                        return (
                            row.FoldedName,
                            Row: new BoardRow
                            {
                                CaseId = injury.Id,
                                CaseVersion = injury.Version,
                                HorseId = injury.HorseId,
                                HorseName = row.HorseName,
                                Yard = row.Yard?.Name,
                                YardPhone = row.Yard?.Phone,
                                YardAddress = row.Yard?.Address,
                                Limb = injury.Limb,
                                Structure = injury.Structure,
                                LastSigned = row.LastSigned,
                                Due = due,
                                Standing = standing,
                                IntervalDays = settings.IntervalDays,
                                OwnIntervalDays = injury.RecheckIntervalDays,
                                StepIntervalDays = recheck.IntervalDays,
                                Booking = open is null ? null : View(open, due, names, booked, visits),
                                ToRing =
                                [
                                    .. people[injury.HorseId]
                                        .Where(person => person.Relation is HorseRelation.Trainer or HorseRelation.Owner)
                                        .OrderBy(person => person.Relation == HorseRelation.Trainer ? 0 : 1),
                                ],
                                LastCall = calls.GetValueOrDefault(injury.Id) is { } call
                                    ? View(call, names, row.LastSigned, practice)
                                    : null,
                                ResponsibleVetId = injury.ResponsibleVetId,
                                ResponsibleVet = PersonNames.Name(names, injury.ResponsibleVetId),
                                CoveringVet = covers
                                    .FirstOrDefault(cover => cover.VetId == injury.ResponsibleVetId && cover.Holds(today))
                                    ?.CoveringVet,
                            }
                        );
                    })
                    .Where(row => row.Row.Standing != RecheckStanding.NotDue || row.Row.CaseId == input.CaseId)
                    .OrderBy(row => row.Row.Standing)
                    .ThenBy(row => row.Row.Standing == RecheckStanding.Booked ? row.Row.Booking?.Date : row.Row.Due.DueDate)
                    .ThenBy(row => row.Row.Booking?.Time)
                    .ThenBy(row => row.FoldedName, StringComparer.Ordinal)
                    .Select(row => row.Row),
            ],
            Vets = await records
                .People.Where(person => person.Role == Role.Vet && person.ArchivedAt == null)
                .OrderBy(person => person.FoldedName)
                .Select(person => new BoardVet(person.Id, person.Name))
                .ToArrayAsync(cancellation),
            Covers = covers,
        };
    }

    private static BookingView View(
        BookingRecord booking,
        RecheckDue due,
        IReadOnlyDictionary<Guid, string> names,
        ILookup<DateOnly, BookedVisit> booked,
        Dictionary<string, (string Horse, TimeOnly? Time)> visits
    ) =>
        new()
        {
            Id = booking.Id,
            Version = booking.Version,
            Date = booking.Date,
            Time = booking.Time,
            Minutes = booking.Minutes,
            VetId = booking.VetId,
            Vet = PersonNames.Name(names, booking.VetId),
            Place = booking.Place,
            TravelNote = booking.TravelNote,
            IsAfterDue = booking.Date > due.DueDate,
            Clashes =
            [
                .. BookingClash
                    .Of(BookingRows.ToVisit(booking), Enumerable.Range(-1, 3).SelectMany(days => booked[booking.Date.AddDays(days)]))
                    .Where(clash => visits[clash.OtherId].Time is not null)
                    .Select(clash => new ClashView(visits[clash.OtherId].Horse, visits[clash.OtherId].Time!.Value, clash.SameVet)),
            ],
        };

    /// <summary>A call of before the last examination was about that one.</summary>
    private static CallView? View(
        CallRecord call,
        IReadOnlyDictionary<Guid, string> names,
        DateOnly? lastSigned,
        PracticeRecord practice
    ) =>
        PracticeTime.DateOf(call.NotedAt, practice.TimeZone) < lastSigned
            ? null
            : new CallView(
                call.Outcome,
                PersonNames.Name(names, call.PersonId),
                call.Words,
                PersonNames.Name(names, call.NotedById) ?? "",
                call.NotedAt
            );
}
