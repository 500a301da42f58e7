using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.History;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.People;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Shares;

/// <summary>Who comes through a share link, how far, and what ends it.</summary>
public sealed class ShareTests
{
    [Fact]
    public async Task An_owners_link_opens_one_horse_to_somebody_who_may_not_sign_in()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor owner = await house.PersonAsync("Wren Ashby", Role.Owner, canSignIn: false);
        Guid horse = await HorseAsync(house, "Thistle Vane", owner: owner.PersonId);
        Guid other = await HorseAsync(house, "Larkspur", owner: owner.PersonId);
        await RenewAsync(house, owner.PersonId, HorseRelation.Owner, horse, "one");

        Actor through = (await DoorAsync(house, "one"))!;

        Assert.Equal((owner.PersonId, Role.Owner, house.Vet.PracticeId), (through.PersonId, through.Role, through.PracticeId));
        Assert.Equal(["Thistle Vane"], await YardAsync(house, through));
        Assert.Equal("Thistle Vane", (await house.Get<GetHorse>().ExecuteAsync(through, horse)).Value.Name);
        Assert.Equal("not-found", (await house.Get<GetHorse>().ExecuteAsync(through, other)).Problems[0].Code);
        Assert.Equal("not-found", (await house.Get<GetHorsePhoto>().ExecuteAsync(through, other)).Problems[0].Code);
        Assert.Equal(1, (await house.Get<FindHorses>().ExecuteAsync(through, new FindHorsesInput())).Value.Total);
        Assert.Equal(
            "not-found",
            (await house.Get<ReportConcern>().ExecuteAsync(through, new ReportConcernInput(Guid.NewGuid(), other, "warm"))).Problems[0].Code
        );
        Assert.Equal(1, (await house.Get<NoteLook>().ExecuteAsync(through, new NoteLookInput(Guid.NewGuid(), [horse, other]))).Value);
        Assert.True(
            (await house.Get<ReportConcern>().ExecuteAsync(through, new ReportConcernInput(Guid.NewGuid(), horse, "warm"))).Succeeded
        );
        Assert.Equal("not-allowed", (await house.Get<GetYard>().ExecuteAsync(owner, NoInput.Value)).Problems[0].Code);
        Assert.Equal(
            "not-allowed",
            (await house.Get<PauseWork>().ExecuteAsync(through, new PauseWorkInput(Guid.NewGuid(), horse, default, null, null)))
                .Problems[0]
                .Code
        );
    }

    [Fact]
    public async Task A_trainers_link_opens_the_horses_they_train_and_not_one_they_own()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor trainer = await house.PersonAsync("Oona Reed", Role.Trainer, canSignIn: false);
        await HorseAsync(house, "Thistle Vane", trainer: trainer.PersonId);
        await HorseAsync(house, "Larkspur", trainer: trainer.PersonId);
        await HorseAsync(house, "Own Cob", owner: trainer.PersonId);
        await HorseAsync(house, "Foreign Dun");
        await RenewAsync(house, trainer.PersonId, HorseRelation.Trainer, null, "one");

        Assert.Equal(["Larkspur", "Thistle Vane"], await YardAsync(house, (await DoorAsync(house, "one"))!));
    }

    [Fact]
    public async Task A_trainers_link_is_of_one_yard_and_so_is_the_list_of_links()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid oona = (await house.PersonAsync("Oona Reed", Role.Trainer, canSignIn: false)).PersonId;
        Guid sedge = await PlaceAsync(house, "Sedge Yard");
        Guid quarry = await PlaceAsync(house, "Quarry Yard");
        await HorseAsync(house, "Thistle Vane", trainer: oona, yard: sedge);
        await HorseAsync(house, "Larkspur", trainer: oona, yard: sedge);
        Guid elsewhere = await HorseAsync(house, "Quarry Dun", trainer: oona, yard: quarry);
        await HorseAsync(house, "Field Cob", trainer: oona);
        await RenewAsync(house, oona, HorseRelation.Trainer, null, "sedge", sedge);
        await RenewAsync(house, oona, HorseRelation.Trainer, null, "quarry", quarry);
        await RenewAsync(house, oona, HorseRelation.Trainer, null, "none");

        Actor through = (await DoorAsync(house, "sedge"))!;

        Assert.Equal(["Larkspur", "Thistle Vane"], await YardAsync(house, through));
        Assert.Equal(["Quarry Dun"], await YardAsync(house, (await DoorAsync(house, "quarry"))!));
        Assert.Equal(["Field Cob"], await YardAsync(house, (await DoorAsync(house, "none"))!));
        Assert.Equal(
            "not-found",
            (await house.Get<ReportConcern>().ExecuteAsync(through, new ReportConcernInput(Guid.NewGuid(), elsewhere, "warm")))
                .Problems[0]
                .Code
        );
        Assert.Equal(
            [(null, "Field Cob"), ("Sedge Yard", "Larkspur, Thistle Vane"), ("Quarry Yard", "Quarry Dun")],
            (await house.Get<ListShares>().ExecuteAsync(house.Vet, new ListSharesInput(oona, null))).Value.Lines.Select(line =>
                (line.YardName, string.Join(", ", line.HorseNames))
            )
        );
        Assert.Equal("Quarry Yard", (await LineAsync(house, elsewhere)).YardName);
        Assert.Equal(
            "not-found",
            (
                await house
                    .Get<RenewShare>()
                    .ExecuteAsync(
                        house.Vet,
                        Input(oona, HorseRelation.Trainer, null, HashOf("empty"), await PlaceAsync(house, "Empty Yard"))
                    )
            )
                .Problems[0]
                .Code
        );
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_trainers_link_ends_with_the_last_horse_that_leaves_and_does_not_come_alive_with_a_later_one(bool movesYard)
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid oona = (await house.PersonAsync("Oona Reed", Role.Trainer, canSignIn: false)).PersonId;
        Guid sedge = await PlaceAsync(house, "Sedge Yard");
        Guid quarry = await PlaceAsync(house, "Quarry Yard");
        Guid first = await HorseAsync(house, "Thistle Vane", trainer: oona, yard: sedge);
        Guid last = await HorseAsync(house, "Larkspur", trainer: oona, yard: sedge);
        await RenewAsync(house, oona, HorseRelation.Trainer, null, "sedge", sedge);

        await PeopleAsync(house, first, trainer: movesYard ? oona : null, yard: movesYard ? quarry : sedge);
        Assert.Equal(["Larkspur"], await YardAsync(house, (await DoorAsync(house, "sedge"))!));

        await PeopleAsync(house, last, trainer: movesYard ? oona : null, yard: movesYard ? quarry : sedge);
        Assert.Null(await DoorAsync(house, "sedge"));

        await PeopleAsync(house, last, trainer: oona, yard: sedge);
        Assert.Null(await DoorAsync(house, "sedge"));
        Assert.Null((await LineAsync(house, last)).Link);
        Assert.NotNull(await RenewAsync(house, oona, HorseRelation.Trainer, null, "again", sedge));
        Assert.NotNull(await DoorAsync(house, "again"));
    }

    [Fact]
    public async Task It_expires_at_the_instant_that_was_told()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Actor owner, Guid horse) = await OwnedAsync(house);
        await RenewAsync(house, owner.PersonId, HorseRelation.Owner, horse, "one");
        Actor through = (await DoorAsync(house, "one"))!;

        house.Time.Advance(TimeSpan.FromDays(new ShareSettings().ExpiryDays) - TimeSpan.FromSeconds(1));
        Assert.NotNull(await DoorAsync(house, "one"));
        Assert.False((await LineAsync(house, horse)).Link!.IsExpired);
        house.Time.Advance(TimeSpan.FromSeconds(1));

        Assert.Null(await DoorAsync(house, "one"));
        Assert.Equal("not-allowed", (await house.Get<GetYard>().ExecuteAsync(through, NoInput.Value)).Problems[0].Code);
        Assert.True((await LineAsync(house, horse)).Link!.IsExpired);
    }

    [Fact]
    public async Task Taken_back_it_opens_nothing_at_the_next_question_of_a_page_that_is_open()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Actor owner, Guid horse) = await OwnedAsync(house);
        Saved made = await RenewAsync(house, owner.PersonId, HorseRelation.Owner, horse, "one");
        Actor through = (await DoorAsync(house, "one"))!;
        Actor assistant = await house.PersonAsync("Pia Thorn", Role.Assistant);

        Assert.True(
            (await house.Get<RevokeShare>().ExecuteAsync(assistant, new RecordInput(Guid.NewGuid(), made.Id, made.Version))).Succeeded
        );

        Assert.Equal("not-allowed", (await house.Get<GetYard>().ExecuteAsync(through, NoInput.Value)).Problems[0].Code);
        Assert.Null(await DoorAsync(house, "one"));
        Assert.Null((await LineAsync(house, horse)).Link);
    }

    [Fact]
    public async Task A_new_one_ends_the_older_one_of_the_same_horse_and_no_other()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Actor owner, Guid horse) = await OwnedAsync(house);
        Guid other = await HorseAsync(house, "Larkspur", owner: owner.PersonId);
        await RenewAsync(house, owner.PersonId, HorseRelation.Owner, horse, "one");
        await RenewAsync(house, owner.PersonId, HorseRelation.Owner, other, "other");

        await RenewAsync(house, owner.PersonId, HorseRelation.Owner, horse, "two");

        Assert.Null(await DoorAsync(house, "one"));
        Assert.NotNull(await DoorAsync(house, "two"));
        Assert.NotNull(await DoorAsync(house, "other"));
    }

    [Fact]
    public async Task It_ends_with_the_period_of_ownership_and_does_not_come_alive_with_a_later_one()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Actor owner, Guid horse) = await OwnedAsync(house);
        await RenewAsync(house, owner.PersonId, HorseRelation.Owner, horse, "one");

        await OwnerAsync(house, horse, null);
        Assert.Null(await DoorAsync(house, "one"));
        await OwnerAsync(house, horse, owner.PersonId);

        Assert.Null(await DoorAsync(house, "one"));
        Assert.Null((await LineAsync(house, horse)).Link);
    }

    [Fact]
    public async Task It_ends_when_its_person_is_put_away_or_becomes_something_else()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Actor owner, Guid horse) = await OwnedAsync(house);
        await RenewAsync(house, owner.PersonId, HorseRelation.Owner, horse, "one");
        PersonView person = (await house.Get<GetPerson>().ExecuteAsync(house.Vet, owner.PersonId)).Value;
        SavePersonInput kept = new()
        {
            CommandId = Guid.NewGuid(),
            Id = person.Id,
            Version = person.Version,
            Name = person.Name,
            Role = Role.Trainer,
        };
        Saved changed = (await house.Get<SavePerson>().ExecuteAsync(house.Vet, kept)).Value;
        Assert.Null(await DoorAsync(house, "one"));
        Saved back = (
            await house
                .Get<SavePerson>()
                .ExecuteAsync(house.Vet, kept with { CommandId = Guid.NewGuid(), Version = changed.Version, Role = Role.Owner })
        ).Value;
        Assert.NotNull(await DoorAsync(house, "one"));

        await house.Get<ArchivePerson>().ExecuteAsync(house.Vet, new RecordInput(Guid.NewGuid(), back.Id, back.Version));

        Assert.Null(await DoorAsync(house, "one"));
    }

    [Fact]
    public async Task A_horse_that_left_takes_its_link_along()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Actor owner, Guid horse) = await OwnedAsync(house);
        await RenewAsync(house, owner.PersonId, HorseRelation.Owner, horse, "one");
        Guid injury = await house.LookAsync(records => records.Cases.Select(row => row.Id).SingleAsync());
        CaseView told = (await house.Get<GetCase>().ExecuteAsync(house.Vet, injury)).Value;

        Outcome<ClosedCases> closed = await house
            .Get<CloseCase>()
            .ExecuteAsync(
                house.Vet,
                new CloseCaseInput
                {
                    CommandId = Guid.NewGuid(),
                    CaseId = injury,
                    Version = told.Version,
                    End = CaseEnd.Sold,
                    On = DateOnly.FromDateTime(house.Time.GetUtcNow().UtcDateTime),
                    Outcome = "sold",
                }
            );

        Assert.True(closed.Succeeded);
        Assert.Null(await DoorAsync(house, "one"));
    }

    [Fact]
    public async Task A_claimed_link_of_somebody_else_or_with_another_role_opens_nothing()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Actor owner, Guid horse) = await OwnedAsync(house);
        Saved made = await RenewAsync(house, owner.PersonId, HorseRelation.Owner, horse, "one");
        Actor stranger = await house.PersonAsync("Sorrel Dunn", Role.Owner);
        Actor vetByLink = house.Vet with { ShareId = made.Id };

        foreach (Actor claimed in (Actor[])[stranger with { ShareId = made.Id }, vetByLink, owner with { ShareId = Guid.NewGuid() }])
        {
            Assert.Equal("not-allowed", (await house.Get<GetYard>().ExecuteAsync(claimed, NoInput.Value)).Problems[0].Code);
        }
    }

    [Theory]
    [InlineData(HorseRelation.Owner)]
    [InlineData(HorseRelation.Trainer)]
    [InlineData(HorseRelation.ReferringVet)]
    public async Task Nobody_is_given_a_link_who_does_not_stand_there(HorseRelation relation)
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid horse = await HorseAsync(house, "Thistle Vane");
        Actor person = await house.PersonAsync("Sorrel Dunn", relation == HorseRelation.ReferringVet ? Role.ReferringVet : Role.Owner);

        Outcome<Saved> refused = await house
            .Get<RenewShare>()
            .ExecuteAsync(house.Vet, Input(person.PersonId, relation, horse, HashOf("one")));

        Assert.Equal("not-found", refused.Problems[0].Code);
    }

    [Fact]
    public async Task When_it_was_last_opened_is_told_and_the_trail_holds_it_once_a_day()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Actor owner, Guid horse) = await OwnedAsync(house);
        Saved made = await RenewAsync(house, owner.PersonId, HorseRelation.Owner, horse, "one");
        Assert.Null((await LineAsync(house, horse)).Link!.LastSeenAt);

        await DoorAsync(house, "one");
        house.Time.Advance(TimeSpan.FromHours(2));
        await DoorAsync(house, "one");
        Assert.Equal(house.Time.GetUtcNow().UtcDateTime, (await LineAsync(house, horse)).Link!.LastSeenAt);
        house.Time.Advance(TimeSpan.FromHours(23));
        await DoorAsync(house, "one");
        await house.Get<RevokeShare>().ExecuteAsync(house.Vet, new RecordInput(Guid.NewGuid(), made.Id, made.Version));
        await DoorAsync(house, "one");
        await DoorAsync(house, "one");

        Assert.Equal(
            [AccessEvent.LinkMade, AccessEvent.LinkOpened, AccessEvent.LinkOpened, AccessEvent.LinkRevoked, AccessEvent.LinkRefused],
            await EventsAsync(house, made.Id)
        );
    }

    [Fact]
    public async Task Nothing_but_the_hash_is_kept_and_neither_trail_nor_list_tells_it()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Actor owner, Guid horse) = await OwnedAsync(house);
        await RenewAsync(house, owner.PersonId, HorseRelation.Owner, horse, "one");
        await DoorAsync(house, "one");

        string[] told = await house.LookAsync(records => records.Changes.Select(change => change.AfterJson).ToArrayAsync());

        Assert.DoesNotContain(told, line => line.Contains(HashOf("one"), StringComparison.Ordinal));
        Assert.DoesNotContain("hash", JsonSerializer.Serialize(await LineAsync(house, horse)), StringComparison.OrdinalIgnoreCase);
        await Assert.ThrowsAsync<ArgumentException>(() =>
            house.Get<RenewShare>().ExecuteAsync(house.Vet, Input(owner.PersonId, HorseRelation.Owner, horse, "the secret itself"))
        );
    }

    [Fact]
    public async Task A_dead_link_may_name_the_number_only_where_there_is_one_practice()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        PracticeView practice = (await house.Get<GetPractice>().ExecuteAsync(house.Vet, NoInput.Value)).Value;
        await house
            .Get<ChangePractice>()
            .ExecuteAsync(
                house.Vet,
                new ChangePracticeInput
                {
                    CommandId = Guid.NewGuid(),
                    Version = practice.Version,
                    Name = practice.Name,
                    Phone = "+43 1 5550100",
                    TimeZone = practice.TimeZone,
                    Language = practice.Language,
                    Settings = practice.Settings,
                }
            );
        Assert.Equal("+43 1 5550100", await house.Get<ShareDoor>().PhoneAsync());

        await house.FoundSecondPracticeAsync();

        Assert.Null(await house.Get<ShareDoor>().PhoneAsync());
    }

    private static Task<Actor?> DoorAsync(RecordsHouse house, string secret) => house.Get<ShareDoor>().FindAsync(HashOf(secret));

    private static string HashOf(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));

    private static RenewShareInput Input(Guid person, HorseRelation relation, Guid? horse, string hash, Guid? yard = null) =>
        new()
        {
            CommandId = Guid.NewGuid(),
            PersonId = person,
            Relation = relation,
            HorseId = horse,
            YardId = yard,
            SecretHash = hash,
        };

    private static async Task<Saved> RenewAsync(
        RecordsHouse house,
        Guid person,
        HorseRelation relation,
        Guid? horse,
        string secret,
        Guid? yard = null
    ) => (await house.Get<RenewShare>().ExecuteAsync(house.Vet, Input(person, relation, horse, HashOf(secret), yard))).Value;

    private static async Task<Guid> PlaceAsync(RecordsHouse house, string name) =>
        (await house.Get<SaveYard>().ExecuteAsync(house.Vet, new SaveYardInput { CommandId = Guid.NewGuid(), Name = name })).Value.Id;

    private static async Task<ShareLine> LineAsync(RecordsHouse house, Guid horse) =>
        Assert.Single((await house.Get<ListShares>().ExecuteAsync(house.Vet, new ListSharesInput(null, horse))).Value.Lines);

    private static async Task<string[]> YardAsync(RecordsHouse house, Actor actor) =>
        [.. (await house.Get<GetYard>().ExecuteAsync(actor, NoInput.Value)).Value.Select(horse => horse.Name)];

    private static async Task<AccessEvent?[]> EventsAsync(RecordsHouse house, Guid share)
    {
        string id = share.ToString("D");
        List<ChangeRecord> lines = await house.LookAsync(records =>
            records
                .Changes.Where(line => line.AfterJson.Contains(id) && line.Kind == AccessLine.Kind)
                .OrderBy(line => line.Number)
                .ToListAsync()
        );
        return [.. lines.Select(line => AccessLine.EventOf(line.AfterJson))];
    }

    private static async Task<(Actor Owner, Guid Horse)> OwnedAsync(RecordsHouse house)
    {
        Actor owner = await house.PersonAsync("Wren Ashby", Role.Owner, canSignIn: false);
        return (owner, await HorseAsync(house, "Thistle Vane", owner: owner.PersonId));
    }

    /// <summary>A horse with an open case and the people beside it.</summary>
    private static async Task<Guid> HorseAsync(RecordsHouse house, string name, Guid? owner = null, Guid? trainer = null, Guid? yard = null)
    {
        Saved horse = (
            await house
                .Get<SaveHorse>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveHorseInput
                    {
                        CommandId = Guid.NewGuid(),
                        Name = name,
                        OwnerId = owner,
                        TrainerId = trainer,
                        YardId = yard,
                    }
                )
        ).Value;
        await house.CaseAsync(horse.Id);
        return horse.Id;
    }

    private static Task OwnerAsync(RecordsHouse house, Guid horse, Guid? owner) => PeopleAsync(house, horse, owner: owner);

    private static async Task PeopleAsync(RecordsHouse house, Guid horse, Guid? owner = null, Guid? trainer = null, Guid? yard = null)
    {
        HorseView kept = (await house.Get<GetHorse>().ExecuteAsync(house.Vet, horse)).Value;
        Outcome<Saved> saved = await house
            .Get<SaveHorse>()
            .ExecuteAsync(
                house.Vet,
                new SaveHorseInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = horse,
                    Version = kept.Version,
                    Name = kept.Name,
                    OwnerId = owner,
                    TrainerId = trainer,
                    YardId = yard,
                }
            );
        Assert.True(saved.Succeeded);
    }
}
