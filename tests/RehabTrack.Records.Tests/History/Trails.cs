using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.History;

/// <summary>What tests do with a trail.</summary>
internal static class Trails
{
    private static readonly Dictionary<Guid, TrailAnchor> FromTheFirst = [];

    /// <summary>What comes of checking the trail of the house's practice.</summary>
    public static async Task<TrailCheck> VerifyAsync(this RecordsHouse house, TrailAnchor? noted = null, TrailAnchor? from = null)
    {
        Guid practice = house.Vet.PracticeId;
        IReadOnlyList<TrailCheck> checks = await house
            .Get<VerifyTrail>()
            .RunAsync(
                new[] { noted }.OfType<TrailAnchor>().ToLookup(_ => practice),
                from is null ? FromTheFirst : new Dictionary<Guid, TrailAnchor> { [practice] = from }
            );
        return checks.Single(check => check.PracticeId == practice);
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
