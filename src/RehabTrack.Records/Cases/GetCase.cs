using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Cases;

/// <summary>Reads one case whole, in a handful of queries.</summary>
public sealed class GetCase(RecordsAccess access) : UseCase<Guid, CaseView>(access)
{
    private static readonly Func<RecordsContext, Guid, Task<CaseRecord?>> CaseById = EF.CompileAsyncQuery(
        (RecordsContext records, Guid id) => records.Cases.AsNoTracking().FirstOrDefault(injury => injury.Id == id)
    );

    private static readonly Func<RecordsContext, Guid, Task<CaseSummaryRecord?>> SummaryOf = EF.CompileAsyncQuery(
        (RecordsContext records, Guid id) => records.CaseSummaries.AsNoTracking().FirstOrDefault(summary => summary.CaseId == id)
    );

    private static readonly Func<RecordsContext, Guid, IAsyncEnumerable<Guid>> VersionsOf = EF.CompileAsyncQuery(
        (RecordsContext records, Guid id) =>
            from examination in records.Examinations
            join version in records.ExaminationVersions on examination.Id equals version.ExaminationId
            where examination.CaseId == id && version.Reason != null
            select version.ExaminationId
    );

    private protected override Right Right => Right.SeeCases;

    private protected override async Task<Outcome<CaseView>> RunAsync(RecordsSession session, Guid input, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        CaseRecord? injury = await CaseById(records, input);
        if (injury is null || injury.ArchivedAt is not null)
        {
            return RecordProblems.NotFound("case");
        }

        HorseView horse =
            await HorseViews.FindAsync(session, injury.HorseId, cancellation) ?? throw new InvalidOperationException("A case has a horse.");
        List<ExaminationRecord> examinations = await CaseRows.ExaminationsAsync(records, input, cancellation);
        ILookup<Guid, ReadingRecord> readings = await CaseRows.ReadingsAsync(records, input, cancellation);
        List<LinkWordRecord> words = await CaseRows.WordsAsync(records, input, cancellation);
        CaseSummaryRecord? summary = await SummaryOf(records, input);
        ILookup<Guid, Guid> amendments = (await VersionsOf(records, input).ToListAsync(cancellation)).ToLookup(id => id);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            [
                injury.ResponsibleVetId,
                injury.ClosedById,
                .. examinations.SelectMany(examination => new[] { examination.SignedById, examination.EnteredById }),
                .. words.SelectMany(word => new[] { word.SaidById, word.WithdrawnById }),
            ],
            cancellation
        );
        Examination[] all = [.. examinations.Select(examination => CaseRows.ToExamination(examination, readings[examination.Id]))];
        HashSet<PlaceKey> places = [.. all.SelectMany(PlacesOf)];
        return new CaseView
        {
            Id = injury.Id,
            Version = injury.Version,
            Horse = horse,
            Label = injury.ImportLabel,
            FirstDiagnosis = injury.FirstDiagnosis,
            Diagnosis = injury.Diagnosis,
            TargetWork = injury.TargetWork,
            ResponsibleVetId = injury.ResponsibleVetId,
            ResponsibleVet = PersonNames.Name(names, injury.ResponsibleVetId),
            IsOpen = injury.ClosedAt is null,
            Closing = injury is { End: { } end, EndedOn: { } on, Outcome: { } outcome }
                ? new CaseClosing(end, on, outcome, PersonNames.Name(names, injury.ClosedById) ?? "")
                : null,
            Course = CaseRows.ToCourse(
                injury,
                [.. all.Where(examination => examination.State != ExaminationState.Draft)],
                await PhaseRows.OfAsync(records, injury.HorseId, session.Today, cancellation)
            ),
            Drafts = [.. all.Where(examination => examination.State == ExaminationState.Draft)],
            Examinations =
            [
                .. examinations.Select(examination => new ExaminationCard
                {
                    Id = examination.Id,
                    Version = examination.Version,
                    Date = examination.Date,
                    Name = examination.Name,
                    State = examination.State,
                    Stance = examination.Stance,
                    Examiner = examination.Examiner,
                    OutsidePractice = examination.OutsidePractice,
                    SignedBy = PersonNames.Name(names, examination.SignedById),
                    SignedAt = examination.SignedAt,
                    EnteredBy = PersonNames.Name(names, examination.EnteredById),
                    WrittenAt = examination.WrittenAt,
                    Amendments = amendments[examination.Id].Count(),
                    ReadingCount = readings[examination.Id].Count(),
                }),
            ],
            LinkWords = [.. words.Select(word => View(word, names, places))],
            Practice = PracticeViews.Of(session),
            Summary = summary is null
                ? null
                : SummaryViews.Of(
                    summary,
                    injury.RecheckIntervalDays,
                    session,
                    injury.ClosedAt is null ? await SignedRechecks.OfHorseAsync(session, injury.HorseId, cancellation) : SignedRecheck.None
                ),
        };
    }

    private static IEnumerable<PlaceKey> PlacesOf(Examination examination) =>
        examination.Readings.Select(reading => new PlaceKey(examination.Id, AnatomyRules.PathOf(reading.Part), reading.Level));

    private static LinkWordView View(LinkWordRecord word, IReadOnlyDictionary<Guid, string> names, HashSet<PlaceKey> places)
    {
        Rechecks.Linking.LinkConstraint constraint = CaseRows.ToConstraint(word);
        return new LinkWordView
        {
            Id = word.Id,
            Version = word.Version,
            Constraint = constraint,
            Reason = word.Reason,
            SaidBy = PersonNames.Name(names, word.SaidById) ?? "",
            SaidAt = word.SaidAt,
            WithdrawnBy = PersonNames.Name(names, word.WithdrawnById),
            WithdrawnAt = word.WithdrawnAt,
            WithdrawnReason = word.WithdrawnReason,
            Applies = places.Contains(constraint.First) && places.Contains(constraint.Second),
        };
    }
}
