using RehabTrack.Records.Covers;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.Bookings;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Covers;

public sealed class CoverTests
{
    [Fact]
    public async Task Who_stands_in_is_named_on_the_board_on_those_days_only()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor covering = await house.PersonAsync("Sorrel Dunn", Role.Vet);
        Guid injury = (await house.ExaminedAsync(61)).Id;
        await SetAsync(house, house.Vet.PersonId, covering.PersonId, 1, 3);

        List<string> named = [];
        for (int day = 0; day < 5; day++)
        {
            named.Add((await house.RowAsync(injury)).CoveringVet ?? "");
            house.Time.Advance(TimeSpan.FromDays(1));
        }

        Assert.Equal(["", "Sorrel Dunn", "Sorrel Dunn", "Sorrel Dunn", ""], named);
    }

    [Fact]
    public async Task Booking_a_vet_who_is_away_names_who_stands_in()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor covering = await house.PersonAsync("Sorrel Dunn", Role.Vet);
        Guid injury = (await house.ExaminedAsync(50)).Id;
        await SetAsync(house, house.Vet.PersonId, covering.PersonId, 1, 3);

        Outcome<Saved> booked = await house.BookAsync(injury, 3, vetId: house.Vet.PersonId);

        Assert.Equal(("vet-away", "Sorrel Dunn"), (booked.Cautions[0].Code, booked.Cautions[0].Arguments[0]));
    }

    [Fact]
    public async Task Days_the_wrong_way_round_oneself_somebody_who_is_no_vet_and_a_second_cover_are_refused()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid vet = house.Vet.PersonId;
        Guid covering = (await house.PersonAsync("Sorrel Dunn", Role.Vet)).PersonId;
        Guid assistant = (await house.PersonAsync("Petra Lowe", Role.Assistant)).PersonId;

        Assert.Equal("cover-ends-before-it-begins", (await SetAsync(house, vet, covering, 3, 1)).Codes());
        Assert.Equal("cover-in-the-past", (await SetAsync(house, vet, covering, -9, -1)).Codes());
        Assert.Equal("cover-by-oneself", (await SetAsync(house, vet, vet, 1, 3)).Codes());
        Assert.Equal("not-found", (await SetAsync(house, vet, assistant, 1, 3)).Codes());
        Saved first = (await SetAsync(house, vet, covering, 1, 3)).Value;
        Assert.Equal("cover-set-already", (await SetAsync(house, vet, covering, 3, 5)).Codes());
        Assert.Equal(["vet-away"], (await SetAsync(house, covering, vet, 2, 2)).Cautions.Select(caution => caution.Code));
        Assert.True(
            (await house.Get<WithdrawCover>().ExecuteAsync(house.Vet, new RecordInput(Guid.NewGuid(), first.Id, first.Version))).Succeeded
        );
        Assert.True((await SetAsync(house, vet, covering, 3, 5)).Succeeded);
        Assert.Equal(2, (await house.Get<ListCovers>().ExecuteAsync(house.Vet, NoInput.Value)).Value.Count);
    }

    [Fact]
    public async Task Cover_is_changed_in_its_place_and_who_changed_it_meanwhile_is_told_with_both_values()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid vet = house.Vet.PersonId;
        Guid covering = (await house.PersonAsync("Sorrel Dunn", Role.Vet)).PersonId;
        Saved set = (await SetAsync(house, vet, covering, 1, 3)).Value;

        // Its own days are not in its way.
        Saved longer = (await SetAsync(house, vet, covering, 2, 5, set)).Value;
        Outcome<Saved> late = await SetAsync(house, vet, covering, 1, 3, set);

        CoverView kept = Assert.Single((await house.Get<ListCovers>().ExecuteAsync(house.Vet, NoInput.Value)).Value);
        Assert.Equal((set.Id, Diary.Today.AddDays(2), Diary.Today.AddDays(5), longer.Version), (kept.Id, kept.From, kept.To, kept.Version));
        Assert.Equal([("from", "changed-meanwhile"), ("to", "changed-meanwhile")], late.Problems.Select(one => (one.Field, one.Code)));
        Assert.True((await SetAsync(house, vet, covering, 2, 5, set)).Succeeded);
        Assert.Equal("not-found", (await SetAsync(house, vet, covering, 2, 5, new Saved(Guid.NewGuid(), set.Version))).Codes());
    }

    private static Task<Outcome<Saved>> SetAsync(RecordsHouse house, Guid vet, Guid covering, int from, int to, Saved? changed = null) =>
        house
            .Get<SaveCover>()
            .ExecuteAsync(
                house.Vet,
                new SaveCoverInput(
                    Guid.NewGuid(),
                    vet,
                    covering,
                    Diary.Today.AddDays(from),
                    Diary.Today.AddDays(to),
                    changed?.Id,
                    changed?.Version
                )
            );
}
