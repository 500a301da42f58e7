using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.People;

/// <summary>
/// Takes out what is held of a person, as JSON: who they are, what they sign in with, the horses they stand beside, links and reports, letters and calls, what they looked at and
/// are filling in, what the trail says of them, and what they did, by kind and time. What they wrote about horses is the horses' record and is not in it.
/// </summary>
public sealed class ExportPerson(RecordsAccess access) : UseCase<Guid, string>(access)
{
    private static readonly JsonSerializerOptions Readable = new(RecordJson.Options) { WriteIndented = true };

    private protected override Right Right => Right.KeepPersonalData;

    private protected override async Task<Outcome<string>> RunAsync(RecordsSession session, Guid input, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        PersonRecord? person = await records.People.AsNoTracking().FirstOrDefaultAsync(record => record.Id == input, cancellation);
        if (person is null)
        {
            return RecordProblems.NotFound("person");
        }

        await AccessNote.WriteAsync(
            records,
            new Writer(session.Person.Id, session.Now, Guid.Empty, nameof(ExportPerson)),
            AccessEvent.DataExported,
            person.Id,
            null,
            cancellation
        );
        return JsonSerializer.Serialize(
            new
            {
                TakenOutAt = session.Now,
                Practice = session.Practice.Name,
                Person = new
                {
                    person.Id,
                    person.Name,
                    person.Role,
                    person.Phone,
                    person.Mail,
                    person.Language,
                    person.CanSignIn,
                    PutAwayAt = person.ArchivedAt,
                },
                SignsInWith = await records
                    .Accounts.Where(account => account.PersonId == person.Id)
                    .Select(account => new { account.SignInName, account.HasSecondStep })
                    .FirstOrDefaultAsync(cancellation),
                Sessions = await records
                    .Sessions.Where(kept => kept.PersonId == person.Id)
                    .OrderBy(kept => kept.Id)
                    .Select(kept => new
                    {
                        kept.Browser,
                        kept.BegunAt,
                        kept.LastSeenAt,
                        kept.EndedAt,
                    })
                    .ToArrayAsync(cancellation),
                Invitations = await records
                    .Invitations.Where(invitation => invitation.PersonId == person.Id)
                    .OrderBy(invitation => invitation.Id)
                    .Select(invitation => new
                    {
                        invitation.MadeAt,
                        invitation.ExpiresAt,
                        invitation.UsedAt,
                        invitation.RevokedAt,
                    })
                    .ToArrayAsync(cancellation),
                Horses = await (
                    from link in records.HorseLinks
                    join horse in records.Horses on link.HorseId equals horse.Id
                    where link.PersonId == person.Id
                    orderby link.Id
                    select new
                    {
                        horse.Name,
                        link.Relation,
                        link.From,
                        link.Until,
                    }
                ).ToArrayAsync(cancellation),
                Links = await records
                    .ShareLinks.Where(share => share.PersonId == person.Id)
                    .OrderBy(share => share.Id)
                    .Select(share => new
                    {
                        share.Relation,
                        share.MadeAt,
                        share.ExpiresAt,
                        share.RevokedAt,
                        share.LastSeenAt,
                    })
                    .ToArrayAsync(cancellation),
                Reports = await (
                    from report in records.Reports
                    join horse in records.Horses on report.HorseId equals horse.Id
                    where report.PersonId == person.Id
                    orderby report.Id
                    select new { Horse = horse.Name, report.Date }
                ).ToArrayAsync(cancellation),
                Letters = await records
                    .Reminders.Where(letter => letter.PersonId == person.Id)
                    .OrderBy(letter => letter.Id)
                    .Select(letter => new
                    {
                        letter.Mail,
                        letter.DueOn,
                        letter.BegunAt,
                        letter.State,
                        letter.Trouble,
                    })
                    .ToArrayAsync(cancellation),
                Calls = await records
                    .Calls.Where(call => call.PersonId == person.Id)
                    .OrderBy(call => call.Id)
                    .Select(call => new
                    {
                        call.NotedAt,
                        call.Outcome,
                        call.Words,
                    })
                    .ToArrayAsync(cancellation),
                Cover = await records
                    .Covers.Where(cover => cover.VetId == person.Id || cover.CoveringVetId == person.Id)
                    .OrderBy(cover => cover.Id)
                    .Select(cover => new { cover.From, cover.To })
                    .ToArrayAsync(cancellation),
                LooksAtPermits = await (
                    from look in records.PermitLooks
                    join horse in records.Horses on look.HorseId equals horse.Id
                    where look.PersonId == person.Id
                    orderby look.Id
                    select new { Horse = horse.Name, look.LastAt }
                ).ToArrayAsync(cancellation),
                Typing = await (
                    from form in records.TypedForms
                    join horse in records.Horses on form.HorseId equals horse.Id
                    where form.PersonId == person.Id && form.ArchivedAt == null
                    orderby form.Id
                    select new
                    {
                        Horse = horse.Name,
                        form.Form,
                        form.WrittenAt,
                    }
                ).ToArrayAsync(cancellation),
                SaidOfThem = (
                    await records
                        .Changes.AsNoTracking()
                        .Where(line => line.RecordId == person.Id)
                        .OrderBy(line => line.Number)
                        .ToArrayAsync(cancellation)
                ).Select(line => new
                {
                    line.Number,
                    line.At,
                    line.UseCase,
                    line.Kind,
                    Fields = ChangeFields.Of(line.BeforeJson, line.AfterJson),
                }),
                DoneByThem = (
                    await records
                        .Changes.AsNoTracking()
                        .Where(line => line.PersonId == person.Id)
                        .OrderBy(line => line.Number)
                        .ToArrayAsync(cancellation)
                ).Select(line => new
                {
                    line.Number,
                    line.At,
                    line.UseCase,
                    line.Kind,
                    Event = line.Kind == AccessLine.Kind ? AccessLine.EventOf(line.AfterJson) : null,
                }),
            },
            Readable
        );
    }
}
