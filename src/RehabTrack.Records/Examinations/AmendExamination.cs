using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>Amends an examination that was signed or imported, with a reason. What it said before stays readable, and the figures that the person saw are kept.</summary>
public sealed class AmendExamination(RecordsAccess access) : Command<AmendExaminationInput, Saved>(access)
{
    private protected override Right Right => Right.SignExaminations;

    private protected override bool NeedsConfirmation => true;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        AmendExaminationInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        ExaminationRecord? examination = await ExaminationStore.FindAsync(records, input.Id, cancellation);
        if (examination is null)
        {
            return RecordProblems.NotFound("examination");
        }

        if (examination.State == ExaminationState.Draft)
        {
            return new Problem("examination", "not-signed-yet");
        }

        ExaminationContent content = input.Content with
        {
            Readings = [.. input.Content.Readings.Where(row => ExaminationRules.IsRead(row.Values))],
        };
        Checks checks = new();
        string? reason = checks.Text("reason", input.Reason);
        if (reason is null)
        {
            checks.Add(new Problem("reason", "reason-missing"));
        }

        List<Problem> unstorable = ExaminationRules.Unstorable(input.Content);
        checks.AddRange(unstorable);
        if (unstorable.Count == 0)
        {
            (Limb limb, DateOnly? birth) = await ExaminationQueries.OfCaseAsync(records, examination.CaseId, cancellation);
            checks.AddRange(ExaminationRules.Check(input.Content, limb, birth, session.Today));
        }

        if (await ExaminationRules.TakenAsync(records, examination.CaseId, examination.Id, content, cancellation) is { } taken)
        {
            checks.Add(taken);
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        List<ReadingRecord> readings = await ExaminationStore.ReadingsAsync(records, examination.Id, cancellation);
        List<Problem> differences = ContentConflict.Between(ExaminationStore.ContentOf(examination, readings), content);
        if (differences.Count == 0)
        {
            return new Problem("readings", "nothing-changed");
        }

        if (examination.Version != input.Version)
        {
            return differences;
        }

        int number = await ExaminationVersions.AmendAsync(session, examination, readings, content, reason!, cancellation);
        await records.SaveChangesAsync(cancellation);
        if (await SignedFigures.KeepAsync(session, examination, number, input.SeenHash, cancellation) is { } changed)
        {
            return changed;
        }

        return Outcome<Saved>.Of(new Saved(examination.Id, examination.Version), ExaminationRules.Cautions(content));
    }
}
