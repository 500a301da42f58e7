using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.History;

/// <summary>What tests do with a trail.</summary>
internal static class Trails
{
    /// <summary>What comes of checking the trail of the house's practice.</summary>
    public static async Task<TrailCheck> VerifyAsync(this RecordsHouse house, TrailAnchor? noted = null, TrailAnchor? from = null)
    {
        IReadOnlyList<TrailCheck> checks = await house.Get<VerifyTrail>().RunAsync(Notes(noted), Notes(from));
        return checks.Single(check => check.PracticeId == house.Vet.PracticeId);

        TrailNote[] Notes(TrailAnchor? anchor) => anchor is null ? [] : [new TrailNote(house.Vet.PracticeId, anchor)];
    }

    public static Task<ChangeRecord[]> LinesAsync(this RecordsHouse house, Guid? practice = null) =>
        house.LookAsync(records => records.Changes.AsNoTracking().OrderBy(line => line.Number).ToArrayAsync(), practice);

    /// <summary>Does to the database what somebody with the file in hand could do: the triggers taken away first.</summary>
    public static Task TamperAsync(this RecordsHouse house, params string[] statements) =>
        house.LookAsync(async records =>
        {
            string[] free =
            [
                "DROP TRIGGER \"Change_is_not_updated\"",
                "DROP TRIGGER \"Change_is_not_deleted\"",
                "DROP INDEX \"IX_Change_PracticeId_Number\"",
            ];
            foreach (string statement in free.Concat(statements))
            {
                await records.Database.ExecuteSqlRawAsync(statement);
            }

            return true;
        });
}
