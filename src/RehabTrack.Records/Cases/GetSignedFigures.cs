using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Cases;

/// <summary>What was seen at each signature of a case, latest first.</summary>
public sealed class GetSignedFigures(RecordsAccess access) : UseCase<Guid, IReadOnlyList<SignedFiguresView>>(access)
{
    private protected override Right Right => Right.SeeCases;

    private protected override async Task<Outcome<IReadOnlyList<SignedFiguresView>>> RunAsync(
        RecordsSession session,
        Guid input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        if (!await records.Cases.AnyAsync(injury => injury.Id == input && injury.ArchivedAt == null, cancellation))
        {
            return RecordProblems.NotFound("case");
        }

        List<SignedFiguresRecord> kept = await records
            .SignedFigures.AsNoTracking()
            .Where(figures => figures.CaseId == input)
            .OrderByDescending(figures => figures.At)
            .ThenByDescending(figures => figures.Id)
            .ToListAsync(cancellation);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            [.. kept.Select(figures => (Guid?)figures.PersonId)],
            cancellation
        );
        return Outcome<IReadOnlyList<SignedFiguresView>>.Of(
            [
                .. kept.Select(figures => new SignedFiguresView(
                    figures.Id,
                    figures.ExaminationId,
                    figures.Number,
                    figures.At,
                    PersonNames.Name(names, figures.PersonId) ?? "",
                    SignedFigures.Read(figures.FiguresJson)
                )),
            ],
            []
        );
    }
}
