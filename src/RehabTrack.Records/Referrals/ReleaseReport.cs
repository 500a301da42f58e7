using System.Text.Json;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Referrals;

/// <summary>
/// Releases a report on a case for a referring vet of its horse: what was signed up to now, and the words that are written for this reader.
/// It is never changed; a later report is another one. A share link opens it.
/// </summary>
public sealed class ReleaseReport(RecordsAccess access) : Command<ReleaseReportInput, Saved>(access)
{
    private protected override Right Right => Right.DecideExercise;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        ReleaseReportInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        if (await ReportRows.CaseAsync(records, input.CaseId, cancellation) is not { } injury)
        {
            return RecordProblems.NotFound("case");
        }

        if (await HorseVets.RefusalAsync(session, injury.HorseId, cancellation) is { } refusal)
        {
            return refusal;
        }

        if (await ReportRows.PeriodAsync(records, injury.HorseId, input.PersonId, cancellation) is not { } period)
        {
            return RecordProblems.NotFound("person");
        }

        Checks checks = new();
        ReportContent content = await ReportRows.ContentAsync(session, injury, checks.Text("words", input.Words), cancellation);
        if (content.Examinations.Count == 0)
        {
            checks.Add(new Problem("case", "report-without-examination"));
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        ReportRecord report = new()
        {
            Id = session.NewId(),
            CaseId = injury.Id,
            HorseId = injury.HorseId,
            PersonId = input.PersonId,
            HorseLinkId = period.Id,
            Date = session.Today,
            ReleasedAt = session.Now,
            ReleasedById = session.Person.Id,
            ContentJson = JsonSerializer.Serialize(content, RecordJson.Options),
        };
        records.Reports.Add(report);
        await records.SaveChangesAsync(cancellation);
        return new Saved(report.Id, report.Version);
    }
}
