using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>Keeps an examination whole, as it stood.</summary>
internal static class ExaminationVersions
{
    public static ExaminationVersionRecord New(
        RecordsSession session,
        Guid examinationId,
        int number,
        string? reason,
        ExaminationContent content
    ) =>
        new()
        {
            Id = session.NewId(),
            PracticeId = session.Practice.Id,
            ExaminationId = examinationId,
            Number = number,
            At = session.Now,
            PersonId = session.Person.Id,
            Reason = reason,
            ContentJson = ExaminationStore.Write(content),
        };

    /// <summary>
    /// Amends: what it was is kept first where it is not kept yet (an imported examination), then what it is, with the reason.
    /// </summary>
    /// <returns>The number of the new version.</returns>
    public static async Task<int> AmendAsync(
        RecordsSession session,
        ExaminationRecord examination,
        List<ReadingRecord> readings,
        ExaminationContent content,
        string reason,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        int number =
            await records
                .ExaminationVersions.Where(version => version.ExaminationId == examination.Id)
                .MaxAsync(version => (int?)version.Number, cancellation)
            ?? 0;
        if (number == 0)
        {
            records.ExaminationVersions.Add(
                new ExaminationVersionRecord
                {
                    Id = session.NewId(),
                    PracticeId = session.Practice.Id,
                    ExaminationId = examination.Id,
                    Number = ++number,
                    At = examination.WrittenAt,
                    PersonId = examination.EnteredById ?? session.Person.Id,
                    ContentJson = ExaminationStore.Write(ExaminationStore.ContentOf(examination, readings)),
                }
            );
        }

        await ExaminationStore.ApplyAsync(session, examination, readings, content, cancellation);
        records.ExaminationVersions.Add(New(session, examination.Id, ++number, reason, content));
        session.Touch(examination.CaseId);
        return number;
    }
}
