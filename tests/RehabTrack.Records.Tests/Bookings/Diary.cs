using RehabTrack.Records.Bookings;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Bookings;

/// <summary>What people of these tests do about rechecks. The practice's day is 24 November 2026 in Vienna.</summary>
internal static class Diary
{
    public static readonly DateOnly Today = new(2026, 11, 24);

    /// <summary>A case last examined some days before today.</summary>
    public static async Task<Saved> ExaminedAsync(this RecordsHouse house, int daysAgo, string horse = "Thistle Vane")
    {
        Saved injury = await house.CaseAsync((await house.HorseAsync(horse)).Id);
        await house.SignedAsync(injury.Id, Wishes.Content(Today.AddDays(-daysAgo), (10, 0), (12, 0.5)));
        return injury;
    }

    public static Task<Outcome<Saved>> BookAsync(
        this RecordsHouse house,
        Guid caseId,
        int days,
        string? time = null,
        string? place = null,
        Guid? vetId = null,
        Guid? commandId = null,
        Actor? actor = null
    ) =>
        house
            .Get<BookRecheck>()
            .ExecuteAsync(
                actor ?? house.Vet,
                new BookRecheckInput(commandId ?? Guid.NewGuid(), caseId, Plan(days, time, place) with { VetId = vetId })
            );

    public static BookingPlan Plan(int days, string? time = null, string? place = null) =>
        new()
        {
            Date = Today.AddDays(days),
            Time = time is null ? null : TimeOnly.ParseExact(time, "HH:mm", null),
            Place = place,
        };

    public static async Task<BoardView> BoardAsync(this RecordsHouse house, Guid? caseId = null) =>
        (await house.Get<GetBoard>().ExecuteAsync(house.Vet, new BoardInput(caseId))).Value;

    public static async Task<BoardRow> RowAsync(this RecordsHouse house, Guid caseId) =>
        Assert.Single((await house.BoardAsync(caseId)).Rows, row => row.CaseId == caseId);

    public static string Codes<T>(this Outcome<T> outcome) => string.Join(',', outcome.Problems.Select(problem => problem.Code));
}
