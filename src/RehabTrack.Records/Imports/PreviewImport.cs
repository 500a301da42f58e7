using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Imports;

/// <summary>Says what a file would bring, with what was chosen so far; writes nothing.</summary>
public sealed class PreviewImport(RecordsAccess access) : UseCase<PreviewImportInput, ImportPreview>(access)
{
    private protected override Right Right => Right.Import;

    private protected override async Task<Outcome<ImportPreview>> RunAsync(
        RecordsSession session,
        PreviewImportInput input,
        CancellationToken cancellation
    )
    {
        IReadOnlyList<PlannedCase> plan = await ImportPlan.MakeAsync(session, input.Cases, input.Choices, cancellation);
        return new ImportPreview
        {
            NewHorses = plan.Select(planned => planned.NewHorse).OfType<PlannedHorse>().Distinct().Count(),
            Cases = [.. plan.Select(View)],
        };
    }

    private static CasePreview View(PlannedCase planned) =>
        new()
        {
            Label = planned.File.Label,
            HorseName = planned.HorseName,
            Skipped = planned.Choice.Skip,
            HorseId = planned.Horse?.Id,
            CaseId = planned.Kept?.Case.Id,
            MustChooseHorse = planned.MustChooseHorse,
            MayBeSame = planned.MayBeSame,
            MayBeSameCase = planned.MayBeSameCase,
            Differences = planned.Differences,
            Problems = planned.Problems,
            Examinations =
            [
                .. planned.Examinations.Select(examination => new ExaminationPreview(
                    examination.File.Id,
                    examination.File.Date,
                    examination.File.Name,
                    examination.Standing,
                    examination.Kept?.Id,
                    examination.File.Readings.Count,
                    examination.KnownReadings,
                    examination.Differences,
                    examination.Amend
                )),
            ],
        };
}
