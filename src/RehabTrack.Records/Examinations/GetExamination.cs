using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>Reads one examination with all that was entered, and what it said before.</summary>
public sealed class GetExamination(RecordsAccess access) : UseCase<Guid, ExaminationView>(access)
{
    private protected override Right Right => Right.SeeCases;

    private protected override async Task<Outcome<ExaminationView>> RunAsync(
        RecordsSession session,
        Guid input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        var found = await (
            from examination in records.Examinations.AsNoTracking()
            join injury in records.Cases.AsNoTracking() on examination.CaseId equals injury.Id
            join horse in records.Horses.AsNoTracking() on injury.HorseId equals horse.Id
            where examination.Id == input && examination.ArchivedAt == null && injury.ArchivedAt == null
            select new
            {
                Examination = examination,
                Case = injury,
                Horse = horse,
            }
        ).FirstOrDefaultAsync(cancellation);
        if (found is null)
        {
            return RecordProblems.NotFound("examination");
        }

        ReadingRecord[] readings = await records
            .Readings.AsNoTracking()
            .Where(reading => reading.ExaminationId == input)
            .OrderBy(reading => reading.Position)
            .ToArrayAsync(cancellation);
        ExaminationVersionRecord[] versions = await records
            .ExaminationVersions.AsNoTracking()
            .Where(version => version.ExaminationId == input)
            .OrderBy(version => version.Number)
            .ToArrayAsync(cancellation);
        Dictionary<int, Guid> figures = await records
            .SignedFigures.Where(seen => seen.ExaminationId == input)
            .ToDictionaryAsync(seen => seen.Number, seen => seen.Id, cancellation);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            [found.Examination.SignedById, found.Examination.EnteredById, .. versions.Select(version => (Guid?)version.PersonId)],
            cancellation
        );
        ExaminationContent content = ExaminationStore.ContentOf(found.Examination, readings);
        return new ExaminationView
        {
            Id = input,
            Version = found.Examination.Version,
            CaseId = found.Case.Id,
            HorseId = found.Horse.Id,
            HorseName = found.Horse.Name,
            Limb = found.Case.Limb,
            Structure = found.Case.Structure,
            Landmark = found.Case.Landmark,
            State = found.Examination.State,
            Content = content,
            Typed = found.Examination.Typed,
            Examination = CaseRows.ToExamination(found.Examination, readings),
            SignedBy = PersonNames.Name(names, found.Examination.SignedById),
            SignedAt = found.Examination.SignedAt,
            EnteredBy = PersonNames.Name(names, found.Examination.EnteredById),
            WrittenAt = found.Examination.WrittenAt,
            Unready =
                found.Examination.State == ExaminationState.Draft
                    ? ExaminationRules.Check(content, found.Case.Limb, found.Horse.BirthDate, session.Today)
                    : [],
            Versions =
            [
                .. versions.Select(version => new ExaminationVersionView(
                    version.Number,
                    version.At,
                    PersonNames.Name(names, version.PersonId) ?? "",
                    version.Reason,
                    ExaminationStore.Read(version.ContentJson),
                    figures.TryGetValue(version.Number, out Guid seen) ? seen : null
                )),
            ],
        };
    }
}
