using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>
/// Signs a draft as it was saved. Rows that were not read go; from now on it is amended, never overwritten. A draft of another
/// practice's examination becomes an outside examination. The figures that the person saw are kept with the signature.
/// </summary>
public sealed class SignExamination(RecordsAccess access) : Command<SignExaminationInput, Saved>(access)
{
    private protected override Right Right => Right.SignExaminations;

    private protected override bool NeedsConfirmation => true;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        SignExaminationInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        ExaminationRecord? draft = await ExaminationStore.FindAsync(records, input.Id, cancellation);
        if (draft is null)
        {
            return RecordProblems.NotFound("examination");
        }

        if (draft.State != ExaminationState.Draft)
        {
            return new Problem("examination", "already-signed");
        }

        if (draft.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        List<ReadingRecord> readings = await ExaminationStore.ReadingsAsync(records, draft.Id, cancellation);
        ExaminationContent content = ExaminationStore.ContentOf(draft, readings);
        (Limb limb, DateOnly? birth) = await ExaminationQueries.OfCaseAsync(records, draft.CaseId, cancellation);
        List<Problem> problems = ExaminationRules.Check(content, limb, birth, session.Today);
        if (await ExaminationRules.TakenAsync(records, draft.CaseId, draft.Id, content, cancellation) is { } taken)
        {
            problems.Add(taken);
        }

        if (problems.Count > 0)
        {
            return problems;
        }

        ExaminationContent signed = content with { Readings = [.. content.Readings.Where(row => ExaminationRules.IsRead(row.Values))] };
        await ExaminationStore.ApplyAsync(session, draft, readings, signed, cancellation);
        draft.Typed = null;
        draft.State = draft.OutsidePractice is null ? ExaminationState.Signed : ExaminationState.Outside;
        draft.SignedAt = session.Now;
        draft.SignedById = session.Person.Id;
        records.ExaminationVersions.Add(ExaminationVersions.New(session, draft.Id, 1, null, signed));
        session.Touch(draft.CaseId);
        await records.SaveChangesAsync(cancellation);
        if (await SignedFigures.KeepAsync(session, draft, 1, input.SeenHash, cancellation) is { } changed)
        {
            return changed;
        }

        return Outcome<Saved>.Of(
            new Saved(draft.Id, draft.Version),
            [
                .. ExaminationRules.Cautions(signed),
                .. await ExaminationRules.ScaleCautionsAsync(records, draft.CaseId, draft.Id, signed, cancellation),
            ]
        );
    }
}
