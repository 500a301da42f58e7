using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>
/// Reads what the mail about a concern is written from, for whoever reported it: to the responsible vets and to those who stand in for
/// them today. Where none of these has an address, it goes to every vet of the practice who has one.
/// </summary>
public sealed class GetConcernLetter(RecordsAccess access) : UseCase<Guid, ConcernLetter>(access)
{
    private protected override Right Right => Right.ReportConcerns;

    private protected override async Task<Outcome<ConcernLetter>> RunAsync(
        RecordsSession session,
        Guid input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        ExerciseEntryRecord? line = await records
            .ExerciseEntries.AsNoTracking()
            .FirstOrDefaultAsync(entry => entry.Id == input && records.Concerns.Any(concern => concern.EntryId == entry.Id), cancellation);
        if (line is null || await ExerciseRows.HorseAsync(session, line.HorseId, cancellation) is not { } horse)
        {
            return RecordProblems.NotFound("concern");
        }

        Guid[] named =
        [
            .. (await ConcernRows.VetsAsync(session, [horse.Id], cancellation))[horse.Id]
                .SelectMany(vet => new Guid?[] { vet.Id, vet.CoveringId })
                .OfType<Guid>(),
        ];
        var vets = await records
            .People.Where(person => person.Role == Role.Vet && person.ArchivedAt == null && person.Mail != null)
            .OrderBy(person => person.FoldedName)
            .Select(person => new
            {
                person.Id,
                person.Name,
                Mail = person.Mail!,
            })
            .ToArrayAsync(cancellation);
        var reached = vets.Where(vet => named.Contains(vet.Id)).ToArray();
        return new ConcernLetter
        {
            HorseName = horse.Name,
            Yard = await records.Yards.Where(yard => yard.Id == horse.YardId).Select(yard => yard.Name).FirstOrDefaultAsync(cancellation),
            PracticeName = session.Practice.Name,
            TimeZone = session.Practice.TimeZone,
            Line = ExerciseRows.Tell(line, await PersonNames.OfAsync(records, [line.EnteredById], cancellation)),
            Readers = [.. (reached.Length > 0 ? reached : vets).Select(vet => new ConcernReader(vet.Name, vet.Mail))],
        };
    }
}
