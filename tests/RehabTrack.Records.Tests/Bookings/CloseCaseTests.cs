using RehabTrack.Records.Bookings;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Overview;
using RehabTrack.Records.Reminders;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Bookings;

public sealed class CloseCaseTests
{
    [Fact]
    public async Task A_horse_that_left_reminds_of_nothing_on_any_of_its_limbs()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid horse = (await house.HorseAsync()).Id;
        Saved one = await house.CaseAsync(horse);
        Saved other = await house.CaseAsync(horse);
        await house.SignedAsync(one.Id, Wishes.Content(Diary.Today.AddDays(-61), (10, 0), (12, 0.5)));
        await house.SignedAsync(other.Id, Wishes.Content(Diary.Today.AddDays(-50), (10, 0), (12, 0.5)));
        await house.BookAsync(other.Id, 5);

        ClosedCases closed = (await CloseAsync(house, one.Id)).Value;

        OverviewView overview = (await house.Get<GetOverview>().ExecuteAsync(house.Vet, NoInput.Value)).Value;
        Assert.Equal(new ClosedCases(2, 1), closed);
        Assert.Empty((await house.BoardAsync(one.Id)).Rows);
        Assert.Equal((0, 0, 0), (overview.OverdueCount, overview.SoonCount, overview.OpenCaseCount));
        Assert.Equal("case-closed", (await house.BookAsync(other.Id, 5)).Codes());
        Assert.Equal("case-closed", (await house.Get<GetReminder>().ExecuteAsync(house.Vet, one.Id)).Codes());
        Assert.Equal("case-closed", (await CloseAsync(house, one.Id)).Codes());
        Assert.False((await house.Get<GetCase>().ExecuteAsync(house.Vet, other.Id)).Value.IsOpen);
    }

    [Fact]
    public async Task A_resolved_case_ends_alone_with_its_bookings_and_reminders()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid horse = (await house.HorseAsync()).Id;
        Saved one = await house.CaseAsync(horse);
        Saved other = await house.CaseAsync(horse);
        await house.SignedAsync(one.Id, Wishes.Content(Diary.Today.AddDays(-61), (10, 0), (12, 0.5)));
        await house.SignedAsync(other.Id, Wishes.Content(Diary.Today.AddDays(-61), (10, 0), (12, 0.5)));
        await house.BookAsync(one.Id, 5);
        await house.BookAsync(other.Id, 6);

        ClosedCases closed = (await CloseAsync(house, one.Id, outcome: "Back at novice eventing", end: CaseEnd.Resolved)).Value;

        CaseView ended = (await house.Get<GetCase>().ExecuteAsync(house.Vet, one.Id)).Value;
        Assert.Equal(new ClosedCases(1, 1), closed);
        Assert.Equal(new CaseClosing(CaseEnd.Resolved, Diary.Today, "Back at novice eventing", house.Vet.Name), ended.Closing);
        Assert.Equal("case-closed", (await house.Get<GetReminder>().ExecuteAsync(house.Vet, one.Id)).Codes());
        Assert.Null((await house.Get<GetCase>().ExecuteAsync(house.Vet, other.Id)).Value.Closing);
        BoardRow row = Assert.Single((await house.BoardAsync()).Rows);
        Assert.Equal((other.Id, Diary.Today.AddDays(6)), (row.CaseId, row.Booking!.Date));
        Assert.True((await house.Get<GetReminder>().ExecuteAsync(house.Vet, other.Id)).Succeeded);
    }

    [Theory]
    [InlineData(1, "Sold to the north", "closed-in-the-future")]
    [InlineData(-51, " ", "field-empty,closed-before-last-examination")]
    [InlineData(-50, "Sold to the north", "")]
    public async Task It_needs_an_outcome_and_a_day_between_the_last_examination_and_today(int days, string outcome, string codes)
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid injury = (await house.ExaminedAsync(50)).Id;

        Assert.Equal(codes, (await CloseAsync(house, injury, days, outcome)).Codes());
    }

    [Fact]
    public async Task Only_a_vet_signs_it_and_not_over_a_change_made_meanwhile()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid injury = (await house.ExaminedAsync(50)).Id;
        Actor assistant = await house.PersonAsync("Petra Lowe", Role.Assistant);
        Actor administrator = await house.PersonAsync("Olan Fisk", Role.Administrator);

        Assert.Equal("not-allowed", (await CloseAsync(house, injury, actor: assistant)).Codes());
        Assert.Equal("not-allowed", (await CloseAsync(house, injury, actor: administrator)).Codes());
        Assert.Equal("changed-meanwhile", (await CloseAsync(house, injury, version: Guid.NewGuid())).Codes());
        Assert.Single((await house.BoardAsync(injury)).Rows);
    }

    private static async Task<Outcome<ClosedCases>> CloseAsync(
        RecordsHouse house,
        Guid caseId,
        int days = 0,
        string outcome = "Sound in walk, sold to the north",
        Actor? actor = null,
        Guid? version = null,
        CaseEnd end = CaseEnd.Sold
    )
    {
        CaseView view = (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value;
        return await house
            .Get<CloseCase>()
            .ExecuteAsync(
                actor ?? house.Vet,
                new CloseCaseInput
                {
                    CommandId = Guid.NewGuid(),
                    CaseId = caseId,
                    Version = version ?? view.Version,
                    End = end,
                    On = Diary.Today.AddDays(days),
                    Outcome = outcome,
                }
            );
    }
}
