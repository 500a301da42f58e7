using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Covers;

/// <summary>What cover must keep to: two vets who are here, days that are not over, and one who stands in at a time.</summary>
internal static class CoverRules
{
    /// <summary>Adds what is wrong, and yields the cover that is set for some of these days already.</summary>
    public static async Task<CoverView[]> CheckAsync(
        RecordsSession session,
        Checks checks,
        Guid vetId,
        Guid coveringVetId,
        DateOnly from,
        DateOnly to,
        CancellationToken cancellation
    )
    {
        await VetAsync(checks, session.Records, "vetId", vetId, cancellation);
        await VetAsync(checks, session.Records, "coveringVetId", coveringVetId, cancellation);
        if (vetId == coveringVetId)
        {
            checks.Add(new Problem("coveringVetId", "cover-by-oneself"));
        }

        if (to < from)
        {
            checks.Add(new Problem("to", "cover-ends-before-it-begins", RecordText.Of(to), RecordText.Of(from)));
        }
        else if (to < session.Today)
        {
            checks.Add(new Problem("to", "cover-in-the-past", RecordText.Of(to), RecordText.Of(session.Today)));
        }

        CoverView[] standing = await CoverRows.FromAsync(session.Records, session.Today, cancellation);
        CoverView[] meanwhile = [.. standing.Where(other => other.From <= to && other.To >= from)];
        if (meanwhile.FirstOrDefault(other => other.VetId == vetId) is { } already)
        {
            checks.Add(
                new Problem("vetId", "cover-set-already", already.CoveringVet, RecordText.Of(already.From), RecordText.Of(already.To))
            );
        }

        return meanwhile;
    }

    /// <summary>Who stands in is away, too, on some of the days.</summary>
    public static IReadOnlyList<Problem> Cautions(IEnumerable<CoverView> meanwhile, Guid coveringVetId) =>
        [
            .. meanwhile
                .Where(other => other.VetId == coveringVetId)
                .Select(other => new Problem("coveringVetId", "vet-away", other.CoveringVet)),
        ];

    private static async Task VetAsync(Checks checks, RecordsContext records, string field, Guid id, CancellationToken cancellation)
    {
        if (!await records.People.AnyAsync(person => person.Id == id && person.Role == Role.Vet && person.ArchivedAt == null, cancellation))
        {
            checks.Add(RecordProblems.NotFound(field));
        }
    }
}
