using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Covers;

/// <summary>What cover must keep to: two vets who are here, days that are not over, and one who stands in at a time.</summary>
internal static class CoverRules
{
    /// <summary>What is wrong with cover that is about to count, and what is to be minded: who stands in may be away, too, on some of the days.</summary>
    public static async Task<(IReadOnlyList<Problem> Wrong, IReadOnlyList<Problem> Cautions)> CheckAsync(
        RecordsSession session,
        CoverRecord cover,
        CancellationToken cancellation
    )
    {
        Checks checks = new();
        await VetAsync(checks, session.Records, "vetId", cover.VetId, cancellation);
        await VetAsync(checks, session.Records, "coveringVetId", cover.CoveringVetId, cancellation);
        if (cover.VetId == cover.CoveringVetId)
        {
            checks.Add(new Problem("coveringVetId", "cover-by-oneself"));
        }

        if (cover.To < cover.From)
        {
            checks.Add(new Problem("to", "cover-ends-before-it-begins", RecordText.Of(cover.To), RecordText.Of(cover.From)));
        }
        else if (cover.To < session.Today)
        {
            checks.Add(new Problem("to", "cover-in-the-past", RecordText.Of(cover.To), RecordText.Of(session.Today)));
        }

        CoverView[] standing = await CoverRows.FromAsync(session.Records, session.Today, cancellation);
        CoverView[] meanwhile = [.. standing.Where(other => other.Id != cover.Id && other.From <= cover.To && other.To >= cover.From)];
        if (meanwhile.FirstOrDefault(other => other.VetId == cover.VetId) is { } already)
        {
            checks.Add(
                new Problem("vetId", "cover-set-already", already.CoveringVet, RecordText.Of(already.From), RecordText.Of(already.To))
            );
        }

        return (
            checks.Problems,
            [
                .. meanwhile
                    .Where(other => other.VetId == cover.CoveringVetId)
                    .Select(other => new Problem("coveringVetId", "vet-away", other.CoveringVet)),
            ]
        );
    }

    private static async Task VetAsync(Checks checks, RecordsContext records, string field, Guid id, CancellationToken cancellation)
    {
        if (!await records.People.AnyAsync(person => person.Id == id && person.Role == Role.Vet && person.ArchivedAt == null, cancellation))
        {
            checks.Add(RecordProblems.NotFound(field));
        }
    }
}
