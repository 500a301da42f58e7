using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.History;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Keeping;

public sealed class HistoryTests
{
    [Theory]
    [InlineData("UPDATE \"Change\" SET \"AfterJson\" = 'x'")]
    [InlineData("DELETE FROM \"Change\"")]
    [InlineData("UPDATE \"ExaminationVersion\" SET \"Reason\" = 'because'")]
    [InlineData("DELETE FROM \"ExaminationVersion\"")]
    public async Task The_database_itself_refuses_to_rewrite_history(string statement)
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Saved injury = await house.CaseAsync(horse.Id);
        await house.SignedAsync(injury.Id, Wishes.Content(new DateOnly(2026, 6, 1), (10, 0), (12, 0.5)));

        SqliteException refused = await Assert.ThrowsAsync<SqliteException>(() =>
            house.LookAsync(records => records.Database.ExecuteSqlRawAsync(statement))
        );

        Assert.Contains("append-only", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_change_tells_who_when_what_it_was_and_what_it_is()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Saved injury = await house.CaseAsync(horse.Id);
        house.Time.Advance(TimeSpan.FromHours(1));
        await house
            .Get<ChangeCase>()
            .ExecuteAsync(
                house.Vet,
                new ChangeCaseInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = injury.Id,
                    Version = injury.Version,
                    Limb = Rechecks.Anatomy.Limb.RightHind,
                    Structure = Rechecks.Anatomy.Structure.SuspensoryLigament,
                    Landmark = Rechecks.Anatomy.Landmark.PointOfHock,
                    Onset = new DateOnly(2026, 4, 1),
                    ResponsibleVetId = house.Vet.PersonId,
                }
            );

        IReadOnlyList<ChangeView> changes = (await house.Get<GetChanges>().ExecuteAsync(house.Vet, injury.Id)).Value;

        Assert.Equal(["ChangeCase", "OpenCase"], changes.Select(change => change.UseCase));
        Assert.Equal([new FieldChange("limb", "LeftHind", "RightHind")], changes[0].Fields);
        Assert.Equal(("Edda Marrow", false, house.Time.GetUtcNow().UtcDateTime), (changes[0].By, changes[0].IsNew, changes[0].At));
        Assert.True(changes[1].IsNew);
        Assert.Equal(DateTimeKind.Utc, changes[0].At.Kind);
    }

    [Fact]
    public async Task Who_wrote_a_record_last_is_told_with_the_moment_and_of_a_horse_the_people_beside_it_count()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Saved person = (
            await house
                .Get<SavePerson>()
                .ExecuteAsync(
                    house.Vet,
                    new SavePersonInput
                    {
                        CommandId = Guid.NewGuid(),
                        Name = "Pia Thorn",
                        Role = Role.Assistant,
                        CanSignIn = true,
                    }
                )
        ).Value;
        Actor assistant = new(house.Vet.PracticeId, person.Id, Role.Assistant, "Pia Thorn");
        HorseView before = (await house.Get<GetHorse>().ExecuteAsync(house.Vet, horse.Id)).Value;
        Assert.Equal(house.Vet.Name, (await house.Get<GetLastWrite>().ExecuteAsync(house.Vet, horse.Id)).Value.By);
        house.Time.Advance(TimeSpan.FromHours(1));

        Outcome<Saved> changed = await house
            .Get<SaveHorse>()
            .ExecuteAsync(
                assistant,
                new SaveHorseInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = horse.Id,
                    Version = before.Version,
                    Name = before.Name,
                    Microchip = before.Microchip,
                    BirthYear = before.BirthYear,
                    BirthDate = before.BirthDate,
                    Sex = before.Sex,
                    Use = before.Use,
                    Markings = before.Markings,
                    YardId = before.YardId,
                    TrainerId = before.Trainer?.PersonId,
                    ReferringVetId = before.ReferringVet?.PersonId,
                    OwnerId = person.Id,
                }
            );

        Assert.True(changed.Succeeded);
        LastWrite last = (await house.Get<GetLastWrite>().ExecuteAsync(house.Vet, horse.Id)).Value;
        Assert.Equal(("Pia Thorn", house.Time.GetUtcNow().UtcDateTime), (last.By, last.At));
        Assert.Equal("not-found", (await house.Get<GetLastWrite>().ExecuteAsync(house.Vet, Guid.NewGuid())).Problems[0].Code);
    }

    [Fact]
    public async Task A_changed_reading_is_told_by_its_place_with_the_fields_that_changed()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Saved injury = await house.CaseAsync(horse.Id);
        SavedDraft draft = await house.DraftAsync(injury.Id, Wishes.Content(new DateOnly(2026, 6, 1), (10, 0), (12.5, 0.5)));
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, draft.Id)).Value;
        DraftReading[] rows =
        [
            view.Content.Readings[0],
            view.Content.Readings[1] with
            {
                Values = view.Content.Readings[1].Values with { LesionAreaCm2 = 0.45 },
            },
        ];
        house.Time.Advance(TimeSpan.FromMinutes(1));
        await house
            .Get<SaveDraft>()
            .ExecuteAsync(
                house.Vet,
                new SaveDraftInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = draft.Id,
                    Version = draft.Version,
                    Content = view.Content with { Readings = rows },
                }
            );

        IReadOnlyList<ChangeView> changes = (await house.Get<GetChanges>().ExecuteAsync(house.Vet, injury.Id)).Value;

        Assert.Equal([new FieldChange("readings[Body 12.5].lesionAreaCm2", "0.5", "0.45")], changes[0].Fields);
    }

    [Fact]
    public void What_a_command_makes_keeps_its_order_within_one_instant()
    {
        DateTime instant = new(2026, 11, 24, 9, 0, 0, DateTimeKind.Utc);

        string[] ids = [.. Enumerable.Range(0, 10_000).Select(_ => NewId.At(instant).ToString("D"))];

        Assert.Equal(ids.Order(StringComparer.Ordinal), ids);
        Assert.Equal(10_000, ids.Distinct(StringComparer.Ordinal).Count());
        // RFC 9562, 5.7: version 7 in the thirteenth digit, the variant 8 to b in the seventeenth.
        Assert.All(ids, id => Assert.Matches("^.{14}7.{4}[89ab]", id));
    }
}
