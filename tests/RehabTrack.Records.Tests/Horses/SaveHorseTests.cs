using System.Security.Cryptography;
using RehabTrack.Records.Horses;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Horses;

public sealed class SaveHorseTests
{
    [Fact]
    public async Task A_horse_is_found_by_its_name_chip_yard_owner_and_trainer()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor owner = await house.PersonAsync("Wren Ashby", Role.Owner);
        Actor trainer = await house.PersonAsync("Jory Penn", Role.Trainer);
        Saved yard = (
            await house.Get<SaveYard>().ExecuteAsync(house.Vet, new SaveYardInput { CommandId = Guid.NewGuid(), Name = "Lower Fell" })
        ).Value;
        await house
            .Get<SaveHorse>()
            .ExecuteAsync(
                house.Vet,
                new SaveHorseInput
                {
                    CommandId = Guid.NewGuid(),
                    Name = "Élan Vital",
                    Microchip = "999 0000 0000 0007",
                    YardId = yard.Id,
                    OwnerId = owner.PersonId,
                    TrainerId = trainer.PersonId,
                }
            );
        await house.HorseAsync("Larkspur");

        foreach (string query in (string[])["elan", "VITAL el", "0000007", "lower", "ashby", "jory élan"])
        {
            HorseRow row = Assert.Single(
                (await house.Get<FindHorses>().ExecuteAsync(house.Vet, new FindHorsesInput { Query = query })).Value.Rows
            );
            Assert.Equal(
                ("Élan Vital", "999000000000007", "Lower Fell", "Wren Ashby", "Jory Penn"),
                (row.Name, row.Microchip, row.Yard, row.Owner, row.Trainer)
            );
        }

        Assert.Equal(
            0,
            (await house.Get<FindHorses>().ExecuteAsync(house.Vet, new FindHorsesInput { Query = "elan larkspur" })).Value.Total
        );
    }

    [Fact]
    public async Task All_that_is_wrong_is_told_at_once()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.HorseAsync("Larkspur", "999000000000001");

        Outcome<Saved> refused = await house
            .Get<SaveHorse>()
            .ExecuteAsync(
                house.Vet,
                new SaveHorseInput
                {
                    CommandId = Guid.NewGuid(),
                    Name = "",
                    Microchip = "999000000000001",
                    BirthYear = 1950,
                    BirthDate = new DateOnly(2027, 1, 1),
                    OwnerId = Guid.NewGuid(),
                }
            );

        Assert.Equal(
            [
                ("name", "field-empty"),
                ("birthYear", "birth-year-out-of-range"),
                ("birthDate", "date-in-future"),
                ("birthDate", "birth-date-not-in-year"),
                ("microchip", "chip-taken"),
                ("ownerId", "not-found"),
            ],
            refused.Problems.Select(problem => (problem.Field, problem.Code))
        );
    }

    [Fact]
    public async Task Pages_hold_every_horse_once_by_name()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        foreach (string name in (string[])["Éclair", "eagle", "Zephyr", "Dune", "ember"])
        {
            await house.HorseAsync(name);
        }

        List<string> names = [];
        for (int page = 1; page <= 3; page++)
        {
            HorsePage found = (
                await house.Get<FindHorses>().ExecuteAsync(house.Vet, new FindHorsesInput { Page = page, PageSize = 2 })
            ).Value;
            Assert.Equal((5, page), (found.Total, found.Page));
            names.AddRange(found.Rows.Select(row => row.Name));
        }

        Assert.Equal(["Dune", "eagle", "Éclair", "ember", "Zephyr"], names);
    }

    [Fact]
    public async Task A_photo_is_kept_and_an_archived_horse_is_listed_apart()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        byte[] picture = [137, 80, 78, 71, 1, 2, 3];

        Saved withPhoto = (
            await house
                .Get<SaveHorsePhoto>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveHorsePhotoInput
                    {
                        CommandId = Guid.NewGuid(),
                        HorseId = horse.Id,
                        ContentType = "image/png",
                        Content = picture,
                    }
                )
        ).Value;
        HorsePhotoView photo = (await house.Get<GetHorsePhoto>().ExecuteAsync(house.Vet, horse.Id)).Value;
        await house.Get<ArchiveHorse>().ExecuteAsync(house.Vet, new RecordInput(Guid.NewGuid(), horse.Id, withPhoto.Version));

        Assert.Equal(picture, photo.Content);
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(picture)), photo.Checksum);
        Assert.Equal(0, (await house.Get<FindHorses>().ExecuteAsync(house.Vet, new FindHorsesInput())).Value.Total);
        Assert.Equal(1, (await house.Get<FindHorses>().ExecuteAsync(house.Vet, new FindHorsesInput { Archived = true })).Value.Total);
    }
}
