using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.History;

/// <summary>Takes lines of the trail out, with their hashes, and answers how many; that it was done is noted in the trail first.</summary>
public sealed class ExportTrail(RecordsAccess access) : UseCase<ExportTrailInput, long>(access)
{
    private const int AtOnce = 500;

    private protected override Right Right => Right.SeeTrail;

    private protected override async Task<Outcome<long>> RunAsync(
        RecordsSession session,
        ExportTrailInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        await AccessNote.WriteAsync(
            records,
            new Writer(session.Person.Id, session.Now, Guid.Empty, nameof(ExportTrail)),
            AccessEvent.DataExported,
            null,
            null,
            cancellation
        );
        // Lines that are added meanwhile are for the next time.
        long end = await records.Changes.Where(line => line.Number >= 1).MaxAsync(line => line.Number, cancellation) ?? 0;
        long count = 0;
        long last = 0;
        while (true)
        {
            ChangeRecord[] lines = await TrailLines
                .Of(session, input.Filter)
                .AsNoTracking()
                .Where(line => line.Number > last && line.Number <= end)
                .OrderBy(line => line.Number)
                .Take(AtOnce)
                .ToArrayAsync(cancellation);
            if (lines.Length == 0)
            {
                return count;
            }

            IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
                records,
                lines.Select(line => (Guid?)line.PersonId),
                cancellation
            );
            foreach (ChangeRecord line in lines)
            {
                await input.Take(Row(line, names, session.Practice.TimeZone));
            }

            count += lines.Length;
            last = lines[^1].Number!.Value;
        }
    }

    private static TrailRow Row(ChangeRecord line, IReadOnlyDictionary<Guid, string> names, string timeZone) =>
        new()
        {
            Number = line.Number!.Value,
            Id = line.Id,
            At = line.At,
            AtPractice = PracticeTime.At(line.At, timeZone),
            PersonId = line.PersonId,
            Person = PersonNames.Name(names, line.PersonId) ?? "",
            CommandId = line.CommandId,
            UseCase = line.UseCase,
            Kind = line.Kind,
            RecordId = line.RecordId,
            CaseId = line.CaseId,
            BeforeJson = line.BeforeJson,
            AfterJson = line.AfterJson,
            Salt = Convert.ToHexStringLower(line.Salt ?? []),
            BodyHash = Convert.ToHexStringLower(line.BodyHash ?? []),
            PreviousHash = Convert.ToHexStringLower(line.PreviousHash ?? []),
            Hash = Convert.ToHexStringLower(line.Hash ?? []),
        };
}
