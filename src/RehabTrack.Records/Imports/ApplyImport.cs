using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Imports;

/// <summary>
/// Imports a file as it was previewed, in one transaction. What it brings is history: not signed here, it raises no reminders and
/// permits nothing. Importing again adds nothing; what differs is amended only where chosen.
/// </summary>
public sealed class ApplyImport(RecordsAccess access) : Command<ApplyImportInput, ImportResult>(access)
{
    private protected override Right Right => Right.Import;

    private protected override async Task<Outcome<ImportResult>> WriteAsync(
        RecordsSession session,
        ApplyImportInput input,
        CancellationToken cancellation
    )
    {
        IReadOnlyList<PlannedCase> plan = await ImportPlan.MakeAsync(session, input.Cases, input.Choices, cancellation);
        List<Problem> problems =
        [
            .. plan.Where(planned => planned.MustChooseHorse)
                .Select(planned => new Problem($"cases[{planned.File.Label}].horse", "horse-not-chosen", planned.HorseName)),
            .. plan.SelectMany(planned => planned.Problems),
        ];
        Checks checks = new();
        string? reason = checks.Text("reason", input.Choices.Reason);
        if (reason is null && plan.Any(planned => planned.Examinations.Any(examination => examination.Amend)))
        {
            checks.Add(new Problem("reason", "reason-missing"));
        }

        problems.AddRange(checks.Problems);
        if (problems.Count > 0)
        {
            return problems;
        }

        if (input.ImportFileId is { } fileId)
        {
            ImportFileRecord? staged = await session.Records.ImportFiles.FirstOrDefaultAsync(file => file.Id == fileId, cancellation);
            if (staged is null)
            {
                return RecordProblems.NotFound("importFile");
            }

            staged.AppliedAt = session.Now;
        }

        return await new ImportWriter(session, input.Progress).WriteAsync(plan, reason, cancellation);
    }
}
