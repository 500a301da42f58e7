using RehabTrack.Records.Horses;
using RehabTrack.Records.Reminders;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.Bookings;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Reminders;

public sealed class ReminderTests
{
    [Fact]
    public async Task A_reminder_is_kept_before_it_goes_and_settled_once()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Guid injury, Guid trainer) = await WithTrainerAsync(house, "wren@yard.example");
        Guid wish = Guid.NewGuid();
        BeginReminder begin = house.Get<BeginReminder>();

        BegunReminder begun = (await begin.ExecuteAsync(house.Vet, new BeginReminderInput(wish, injury, trainer, false))).Value;
        BegunReminder repeated = (await begin.ExecuteAsync(house.Vet, new BeginReminderInput(wish, injury, trainer, false))).Value;
        Outcome<BegunReminder> second = await begin.ExecuteAsync(house.Vet, new BeginReminderInput(Guid.NewGuid(), injury, trainer, false));
        Outcome<Saved> settled = await SettleAsync(house, begun.Id, null);
        Outcome<Saved> settledAgain = await SettleAsync(house, begun.Id, "mail-refused");

        ReminderView kept = Assert.Single((await house.Get<GetReminder>().ExecuteAsync(house.Vet, injury)).Value.Mailed);
        Assert.Equal((begun.Id, "wren@yard.example"), (repeated.Id, repeated.Mail));
        Assert.Equal("reminded-today", second.Codes());
        Assert.True(settled.Succeeded);
        Assert.Equal("not-found", settledAgain.Codes());
        Assert.Equal(("Wren Ashby", ReminderState.Sent, (string?)null, "Edda Marrow"), (kept.To, kept.State, kept.Trouble, kept.By));
    }

    [Fact]
    public async Task A_refused_one_may_be_tried_again_at_once_and_a_wanted_second_one_too()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Guid injury, Guid trainer) = await WithTrainerAsync(house, "wren@yard.example");
        BeginReminder begin = house.Get<BeginReminder>();

        BegunReminder first = (await begin.ExecuteAsync(house.Vet, new BeginReminderInput(Guid.NewGuid(), injury, trainer, false))).Value;
        await SettleAsync(house, first.Id, "mail-refused");

        Assert.True((await begin.ExecuteAsync(house.Vet, new BeginReminderInput(Guid.NewGuid(), injury, trainer, false))).Succeeded);
        Assert.True((await begin.ExecuteAsync(house.Vet, new BeginReminderInput(Guid.NewGuid(), injury, trainer, true))).Succeeded);
    }

    [Fact]
    public async Task Somebody_without_an_address_or_not_of_this_horse_is_not_written_to()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Guid injury, Guid trainer) = await WithTrainerAsync(house, null);
        BeginReminder begin = house.Get<BeginReminder>();

        Assert.Equal(
            "reader-without-mail",
            (await begin.ExecuteAsync(house.Vet, new BeginReminderInput(Guid.NewGuid(), injury, trainer, false))).Codes()
        );
        Assert.Equal(
            "not-found",
            (await begin.ExecuteAsync(house.Vet, new BeginReminderInput(Guid.NewGuid(), injury, house.Vet.PersonId, false))).Codes()
        );
    }

    private static Task<Outcome<Saved>> SettleAsync(RecordsHouse house, Guid id, string? trouble) =>
        house.Get<SettleReminder>().ExecuteAsync(house.Vet, new SettleReminderInput(Guid.NewGuid(), id, trouble));

    private static async Task<(Guid Case, Guid Trainer)> WithTrainerAsync(RecordsHouse house, string? mail)
    {
        Guid trainer = (await house.AddAsync("Wren Ashby", Role.Trainer, mail: mail)).Id;
        Guid horse = (
            await house
                .Get<SaveHorse>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveHorseInput
                    {
                        CommandId = Guid.NewGuid(),
                        Name = "Thistle Vane",
                        TrainerId = trainer,
                    }
                )
        ).Value.Id;
        Guid injury = (await house.CaseAsync(horse)).Id;
        await house.SignedAsync(injury, Wishes.Content(Diary.Today.AddDays(-61), (10, 0), (12, 0.5)));
        return (injury, trainer);
    }
}
