using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Covers;

/// <summary>
/// Which vets may sign for a horse today: those responsible for one of its open cases, and who stands in for one of them. Where no vet who
/// can sign is responsible, any vet may. It is asked anew at every signature, so cover that was taken back gives nothing any more.
/// </summary>
internal static class HorseVets
{
    /// <summary>Why the person who asks may not sign for the horse; null when they may. Nobody stands in for who stands in.</summary>
    public static async Task<Problem?> RefusalAsync(RecordsSession session, Guid horseId, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        var responsible = await (
            from injury in ExerciseRows.OpenCases(records)
            join vet in records.People on injury.ResponsibleVetId equals vet.Id
            where injury.HorseId == horseId && vet.Role == Role.Vet && vet.CanSignIn && vet.ArchivedAt == null
            orderby injury.Id
            select new { vet.Id, vet.Name }
        ).ToListAsync(cancellation);
        if (responsible.Count == 0 || responsible.Exists(vet => vet.Id == session.Person.Id))
        {
            return null;
        }

        CoverView[] covers = await CoverRows.FromAsync(records, session.Today, cancellation);
        return covers.Any(cover =>
            cover.CoveringVetId == session.Person.Id && cover.Holds(session.Today) && responsible.Exists(vet => vet.Id == cover.VetId)
        )
            ? null
            : RecordProblems.OtherVet(responsible.Select(vet => vet.Name).Distinct(StringComparer.Ordinal));
    }
}
