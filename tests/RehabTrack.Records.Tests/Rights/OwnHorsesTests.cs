using RehabTrack.Records.Horses;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Rights;

/// <summary>What those who do not work here may see: their own horses, by name and yard.</summary>
public sealed class OwnHorsesTests
{
    [Theory]
    [InlineData(Role.Owner)]
    [InlineData(Role.Trainer)]
    [InlineData(Role.ReferringVet)]
    public async Task They_find_their_own_horses_without_cases_chips_or_people(Role role)
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor person = await house.PersonAsync("Wren Ashby", role);
        Saved own = await SaveAsync(house, "Thistle Vane", role, person.PersonId);
        Saved other = await house.HorseAsync("Larkspur");
        await house.CaseAsync(own.Id);

        HorsePage page = (await house.Get<FindHorses>().ExecuteAsync(person, new FindHorsesInput())).Value;
        HorseView view = (await house.Get<GetHorse>().ExecuteAsync(person, own.Id)).Value;
        Outcome<HorseView> refused = await house.Get<GetHorse>().ExecuteAsync(person, other.Id);

        HorseRow row = Assert.Single(page.Rows);
        Assert.Equal(("Thistle Vane", 1), (row.Name, page.Total));
        Assert.Equal((null, null, null), (row.Microchip, row.BirthYear, row.Owner));
        Assert.Empty(row.OpenCases);
        Assert.Empty(view.Cases);
        Assert.Empty(view.People);
        Assert.Null(view.Markings);
        Assert.Equal("not-found", Assert.Single(refused.Problems).Code);
    }

    [Fact]
    public async Task A_horse_that_went_to_another_owner_is_no_longer_theirs()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor person = await house.PersonAsync("Wren Ashby", Role.Owner);
        Saved horse = await SaveAsync(house, "Thistle Vane", Role.Owner, person.PersonId);
        await SaveAsync(house, "Thistle Vane", Role.Owner, null, horse);

        HorsePage page = (await house.Get<FindHorses>().ExecuteAsync(person, new FindHorsesInput())).Value;

        Assert.Equal(0, page.Total);
    }

    [Fact]
    public async Task They_read_the_practices_telephone_and_none_of_its_settings()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        PracticeView practice = (await house.Get<GetPractice>().ExecuteAsync(house.Vet, NoInput.Value)).Value;
        Rechecks.Analysis.AnalysisSettings own = practice.Settings with { Error = practice.Settings.Error with { LesionAreaCv = 0.2 } };
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
                    Settings = own,
                }
            );
        Actor person = await house.PersonAsync("Wren Ashby", Role.Owner);

        PracticeView seen = (await house.Get<GetPractice>().ExecuteAsync(person, NoInput.Value)).Value;
        PracticeView staff = (await house.Get<GetPractice>().ExecuteAsync(house.Vet, NoInput.Value)).Value;

        Assert.Equal("+43 1 5550100", seen.Phone);
        Assert.Equal(practice.Settings, seen.Settings);
        Assert.Equal(own, staff.Settings);
    }

    private static async Task<Saved> SaveAsync(RecordsHouse house, string name, Role role, Guid? person, Saved? known = null) =>
        (
            await house
                .Get<SaveHorse>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveHorseInput
                    {
                        CommandId = Guid.NewGuid(),
                        Id = known?.Id,
                        Version = known?.Version,
                        Name = name,
                        Microchip = "999000000000001",
                        BirthYear = 2014,
                        Markings = "bay",
                        OwnerId = role == Role.Owner ? person : null,
                        TrainerId = role == Role.Trainer ? person : null,
                        ReferringVetId = role == Role.ReferringVet ? person : null,
                    }
                )
        ).Value;
}
