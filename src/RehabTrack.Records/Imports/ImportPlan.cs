using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Imports;

/// <summary>
/// Finds out what each case of a file is here: which horse, which case, which examinations are new, known or differ. Preview and import
/// make the same plan, so that what is written is what was shown.
/// </summary>
internal static class ImportPlan
{
    private const int Chunk = 500;

    public static async Task<IReadOnlyList<PlannedCase>> MakeAsync(
        RecordsSession session,
        IReadOnlyList<CaseFile> files,
        ImportChoices choices,
        CancellationToken cancellation
    )
    {
        HorseRegister register = await HorseRegister.ReadAsync(session.Records, cancellation);
        PlannedHorses newHorses = new();
        List<PlannedCase> plan = new(files.Count);
        foreach (CaseFile[] chunk in files.Chunk(Chunk))
        {
            ILookup<Guid, KeptCase> kept = await KeptCasesAsync(session.Records, register, chunk, choices, cancellation);
            plan.AddRange(chunk.Select(file => Plan(session, register, kept, newHorses, file, choices)));
        }

        return plan;
    }

    private static PlannedCase Plan(
        RecordsSession session,
        HorseRegister register,
        ILookup<Guid, KeptCase> kept,
        PlannedHorses newHorses,
        CaseFile file,
        ImportChoices choices
    )
    {
        CaseChoice choice = choices.Of(file.Label);
        string name = NameOf(file);
        if (choice.Skip)
        {
            return new PlannedCase
            {
                File = file,
                Choice = choice,
                HorseName = name,
            };
        }

        (HorseRecord? horse, IReadOnlyList<HorseCandidate> alike, bool mustChoose) = Horse(register, kept, file, choice);
        List<Problem> problems = [.. ImportTexts.Unkeepable(file)];
        if (choice.HorseId is not null && horse is null)
        {
            problems.Add(RecordProblems.NotFound($"cases[{file.Label}].horse"));
        }

        KeptCase? injury = horse is null ? null : Case(kept[horse.Id], file, choice);
        if (choice.CaseId is not null && injury is null)
        {
            problems.Add(RecordProblems.NotFound($"cases[{file.Label}].case"));
        }

        problems.AddRange(Check(session, horse, injury, file));
        PlannedExamination[] examinations =
        [
            .. file
                .Course.Examinations.OrderBy(examination => examination.Date)
                .ThenBy(examination => examination.Name, StringComparer.Ordinal)
                .Select(examination => Examination(injury, examination, choices, choice)),
        ];
        problems.AddRange(CheckAmendments(session, file, horse, examinations));
        return new PlannedCase
        {
            File = file,
            Choice = choice,
            HorseName = string.IsNullOrWhiteSpace(file.Horse.Name) ? horse?.Name ?? name : name,
            Horse = horse,
            NewHorse = horse is null && !mustChoose ? newHorses.Of(name, file.Horse) : null,
            MustChooseHorse = mustChoose,
            MayBeSame = alike,
            Kept = injury,
            MayBeSameCase =
                horse is null || injury is not null
                    ? []
                    :
                    [
                        .. kept[horse.Id]
                            .Where(other =>
                                other.Case.ClosedAt is null
                                && other.Case.Limb == file.Course.Limb
                                && other.Case.Structure == file.Course.Structure
                            )
                            .Select(other => other.Case.Id),
                    ],
            Differences = injury is null ? [] : CaseDifferences(injury.Case, file.Course),
            Examinations = examinations,
            Problems = problems,
        };
    }

    private static (HorseRecord? Horse, IReadOnlyList<HorseCandidate> Alike, bool MustChoose) Horse(
        HorseRegister register,
        ILookup<Guid, KeptCase> kept,
        CaseFile file,
        CaseChoice choice
    )
    {
        string name = NameOf(file);
        IReadOnlyList<HorseRecord> exact = register.Exact(name, file.Horse);
        IReadOnlyList<(HorseRecord Horse, HorseLikeness Likeness)> alike = register.Alike(name, file.Horse);
        HorseCandidate[] candidates =
        [
            .. alike.Where(found => found.Likeness == HorseLikeness.SameChip).Select(Candidate),
            .. exact.Select(horse => Candidate((horse, HorseLikeness.SameName))),
            .. alike.Where(found => found.Likeness != HorseLikeness.SameChip).Select(Candidate),
        ];
        if (choice.HorseId is { } chosen)
        {
            return (register.Find(chosen), candidates, false);
        }

        if (choice.NewHorse)
        {
            return (null, candidates, false);
        }

        HorseRecord[] remembered =
        [
            .. exact.Concat(alike.Select(found => found.Horse)).Where(horse => kept[horse.Id].Any(injury => Remembers(injury, file))),
        ];
        if (remembered is [HorseRecord known])
        {
            return (known, [], false);
        }

        bool chipElsewhere = alike.Any(found => found.Likeness == HorseLikeness.SameChip);
        if (exact is [HorseRecord only] && !chipElsewhere)
        {
            return (only, [], false);
        }

        bool mustChoose = exact.Count > 0 || alike.Any(found => found.Likeness != HorseLikeness.SimilarName);
        return (null, candidates, mustChoose);
    }

    private static HorseCandidate Candidate((HorseRecord Horse, HorseLikeness Likeness) found) =>
        new(found.Horse.Id, found.Horse.Name, found.Horse.Microchip, found.Horse.BirthYear, found.Likeness);

    /// <summary>Whether the case here came from this very case of a file: the label, the place, and an examination in common.</summary>
    private static bool Remembers(KeptCase injury, CaseFile file) =>
        SameLabel(injury.Case.ImportLabel, file.Label)
        && (file.Course.Limb == Limb.Unknown || injury.Case.Limb == file.Course.Limb)
        && injury.Examinations.Any(kept => file.Course.Examinations.Any(examination => SameExamination(kept, examination)));

    private static KeptCase? Case(IEnumerable<KeptCase> kept, CaseFile file, CaseChoice choice) =>
        choice.CaseId is { } chosen
            ? kept.FirstOrDefault(injury => injury.Case.Id == chosen)
            : kept.FirstOrDefault(injury => SameLabel(injury.Case.ImportLabel, file.Label));

    private static PlannedExamination Examination(KeptCase? injury, Examination examination, ImportChoices choices, CaseChoice choice) =>
        injury?.Examinations.FirstOrDefault(record => SameExamination(record, examination)) is { } kept
            ? ExaminationComparison.Of(
                examination,
                kept,
                [.. injury.Readings[kept.Id]],
                choices.AmendAll || choice.Amend.Contains(examination.Id, StringComparer.Ordinal)
            )
            : new PlannedExamination { File = examination, Standing = ExaminationStanding.New };

    private static IEnumerable<Problem> Check(RecordsSession session, HorseRecord? horse, KeptCase? injury, CaseFile file)
    {
        if (injury?.Case.Landmark is { } kept && LandmarkOf(file.Course) is { } inFile && kept != inFile && injury.Examinations.Count > 0)
        {
            yield return new Problem(
                $"cases[{file.Label}].landmark",
                "landmark-differs-from-case",
                AnatomyCodes.Landmarks.CodeOf(kept),
                AnatomyCodes.Landmarks.CodeOf(inFile)
            );
        }

        Limb limb = injury is { Case.Limb: not Limb.Unknown } ? injury.Case.Limb : file.Course.Limb;
        foreach (Examination examination in file.Course.Examinations)
        {
            foreach (Problem problem in ZoneRules.Check(examination.Zones, limb, []))
            {
                yield return problem with
                {
                    Field = $"cases[{file.Label}].examinations[{examination.Id}].{problem.Field}",
                };
            }

            foreach (
                Problem problem in DateRules.CheckExamination(examination.Date, horse?.BirthDate ?? file.Horse.BirthDate, session.Today)
            )
            {
                yield return problem with
                {
                    Field = $"cases[{file.Label}].examinations[{examination.Id}].date",
                };
            }
        }
    }

    private static IEnumerable<Problem> CheckAmendments(
        RecordsSession session,
        CaseFile file,
        HorseRecord? horse,
        IReadOnlyList<PlannedExamination> examinations
    ) =>
        examinations
            .Where(planned => planned.Amend)
            .SelectMany(planned =>
                ExaminationRules
                    .Check(planned.Amended!, file.Course.Limb, horse?.BirthDate, session.Today)
                    .Select(problem => problem with { Field = $"cases[{file.Label}].examinations[{planned.File.Id}].{problem.Field}" })
            )
            .Concat(VetOnly(session, file, examinations));

    private static IEnumerable<Problem> VetOnly(RecordsSession session, CaseFile file, IReadOnlyList<PlannedExamination> examinations) =>
        examinations
            .Where(planned =>
                planned.Amend && planned.Kept!.State == ExaminationState.Signed && !session.Allows(Rights.Right.SignExaminations)
            )
            .Select(planned => RecordProblems.VetOnly($"cases[{file.Label}].examinations[{planned.File.Id}]"));

    private static List<FieldDifference> CaseDifferences(CaseRecord kept, CaseCourse file)
    {
        List<FieldDifference> differences = [];
        void Differ(string field, object? was, object? inFile)
        {
            if (inFile is not (null or Limb.Unknown or Structure.Unknown) && !Equals(was, inFile))
            {
                differences.Add(new FieldDifference(field, was is null ? null : RecordText.Of(was), RecordText.Of(inFile)));
            }
        }

        Differ("limb", kept.Limb, file.Limb);
        Differ("structure", kept.Structure, file.Structure);
        Differ("landmark", kept.Landmark, LandmarkOf(file));
        Differ("onset", kept.Onset, file.Onset);
        Differ(
            "other_limb",
            kept.OtherLimb == OtherLimb.NotRecorded ? null : ExamCodes.OtherLimbs.CodeOf(kept.OtherLimb),
            file.OtherLimb == OtherLimb.NotRecorded ? null : ExamCodes.OtherLimbs.CodeOf(file.OtherLimb)
        );
        Differ(ReadingFields.ZoneLength, kept.ZoneLengthCm, file.ZoneLength?.Value);
        return differences;
    }

    /// <summary>Where the tapes of a file start; null where all its levels are zones, which say nothing of a tape.</summary>
    public static Landmark? LandmarkOf(CaseCourse file) =>
        file.Examinations.Any(examination => examination.Zones is null) ? file.Landmark : null;

    private static async Task<ILookup<Guid, KeptCase>> KeptCasesAsync(
        RecordsContext records,
        HorseRegister register,
        IReadOnlyList<CaseFile> files,
        ImportChoices choices,
        CancellationToken cancellation
    )
    {
        Guid[] horses =
        [
            .. files
                .SelectMany(file =>
                {
                    string name = NameOf(file);
                    return register
                        .Exact(name, file.Horse)
                        .Select(horse => horse.Id)
                        .Concat(register.Alike(name, file.Horse).Select(found => found.Horse.Id))
                        .Concat(choices.Of(file.Label).HorseId is { } chosen ? [chosen] : []);
                })
                .Distinct(),
        ];
        if (horses.Length == 0)
        {
            return Array.Empty<KeptCase>().ToLookup(injury => injury.Case.HorseId);
        }

        CaseRecord[] cases = await records
            .Cases.AsNoTracking()
            .Where(injury => horses.Contains(injury.HorseId) && injury.ArchivedAt == null)
            .OrderBy(injury => injury.Id)
            .ToArrayAsync(cancellation);
        Guid[] caseIds = [.. cases.Select(injury => injury.Id)];
        ExaminationRecord[] examinations = await records
            .Examinations.AsNoTracking()
            .Where(examination =>
                caseIds.Contains(examination.CaseId) && examination.ArchivedAt == null && examination.State != ExaminationState.Draft
            )
            .OrderBy(examination => examination.Id)
            .ToArrayAsync(cancellation);
        Guid[] examinationIds = [.. examinations.Select(examination => examination.Id)];
        ReadingRecord[] readings = await records
            .Readings.AsNoTracking()
            .Where(reading => examinationIds.Contains(reading.ExaminationId))
            .OrderBy(reading => reading.Position)
            .ToArrayAsync(cancellation);
        ILookup<Guid, ExaminationRecord> byCase = examinations.ToLookup(examination => examination.CaseId);
        ILookup<Guid, ReadingRecord> byExamination = readings.ToLookup(reading => reading.ExaminationId);
        return cases.Select(injury => new KeptCase(injury, [.. byCase[injury.Id]], byExamination)).ToLookup(injury => injury.Case.HorseId);
    }

    private static bool SameLabel(string? kept, string label) => kept is not null && Folded.Of(kept) == Folded.Of(label);

    private static bool SameExamination(ExaminationRecord kept, Examination file) =>
        kept.Date == file.Date && string.Equals(kept.Name ?? "", file.Name?.Trim() ?? "", StringComparison.OrdinalIgnoreCase);

    private static string NameOf(CaseFile file) => string.IsNullOrWhiteSpace(file.Horse.Name) ? file.Label : file.Horse.Name.Trim();
}
