using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.History;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Overview;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Rights;

/// <summary>Two practices in one file never meet.</summary>
public sealed class PracticeIsolationTests
{
    [Fact]
    public async Task Ids_of_another_practice_are_not_found_and_nothing_of_it_is_listed()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Saved injury = await house.CaseAsync(horse.Id);
        Saved signed = await house.SignedAsync(injury.Id, Wishes.Content(new DateOnly(2026, 6, 1), (10, 0), (12, 0.5)));
        SavedDraft draft = await house.DraftAsync(injury.Id, Wishes.Content(new DateOnly(2026, 8, 1), (12, 0.5)));
        Saved file = (
            await house.Get<StageImportFile>().ExecuteAsync(house.Vet, new StageImportFileInput(Guid.NewGuid(), "a.csv", [1]))
        ).Value;
        await house.Get<RememberMapping>().ExecuteAsync(house.Vet, new RememberMappingInput(Guid.NewGuid(), "f", "{}"));
        Actor stranger = await house.FoundSecondPracticeAsync();

        Assert.Equal("not-found", Code(await house.Get<GetHorse>().ExecuteAsync(stranger, horse.Id)));
        Assert.Equal("not-found", Code(await house.Get<GetCase>().ExecuteAsync(stranger, injury.Id)));
        Assert.Equal("not-found", Code(await house.Get<GetChanges>().ExecuteAsync(stranger, injury.Id)));
        Assert.Equal("not-found", Code(await house.Get<GetLastWrite>().ExecuteAsync(stranger, horse.Id)));
        Assert.Equal("not-found", Code(await house.Get<GetExamination>().ExecuteAsync(stranger, signed.Id)));
        Assert.Equal("not-found", Code(await house.Get<GetPerson>().ExecuteAsync(stranger, house.Vet.PersonId)));
        Assert.Equal("not-found", Code(await house.Get<GetStagedFile>().ExecuteAsync(stranger, file.Id)));
        Assert.Equal("not-found", Code(await house.Get<FindMapping>().ExecuteAsync(stranger, "f")));
        Assert.Equal("not-found", Code(await house.Get<GetHorsePhoto>().ExecuteAsync(stranger, horse.Id)));
        Assert.Equal(
            "not-found",
            Code(
                await house.Get<SignExamination>().ExecuteAsync(stranger, new SignExaminationInput(Guid.NewGuid(), draft.Id, draft.Version))
            )
        );
        Assert.Equal(
            "not-found",
            Code(await house.Get<ArchiveHorse>().ExecuteAsync(stranger, new RecordInput(Guid.NewGuid(), horse.Id, horse.Version)))
        );
        Assert.Equal(
            "not-found",
            Code(await house.Get<ArchiveCase>().ExecuteAsync(stranger, new RecordInput(Guid.NewGuid(), injury.Id, injury.Version)))
        );
        Assert.Equal(
            "not-found",
            Code(
                await house
                    .Get<StartExamination>()
                    .ExecuteAsync(stranger, new StartExaminationInput { CommandId = Guid.NewGuid(), CaseId = injury.Id })
            )
        );
        Assert.Equal(0, (await house.Get<FindHorses>().ExecuteAsync(stranger, new FindHorsesInput())).Value.Total);
        Assert.Equal(
            "Runa Tolland",
            Assert.Single((await house.Get<ListPeople>().ExecuteAsync(stranger, new ListPeopleInput())).Value).Name
        );
        OverviewView overview = (await house.Get<GetOverview>().ExecuteAsync(stranger, NoInput.Value)).Value;
        Assert.Equal((0, 0, 0), (overview.HorseCount, overview.OpenCaseCount, overview.Drafts.Count));
        Assert.Equal(1, (await house.Get<FindHorses>().ExecuteAsync(house.Vet, new FindHorsesInput())).Value.Total);
    }

    [Fact]
    public async Task An_actor_who_claims_another_practice_is_refused()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor stranger = await house.FoundSecondPracticeAsync();

        Outcome<HorsePage> refused = await house
            .Get<FindHorses>()
            .ExecuteAsync(stranger with { PracticeId = house.Vet.PracticeId }, new FindHorsesInput());

        Assert.Equal("not-allowed", Code(refused));
    }

    [Fact]
    public async Task A_horse_of_another_practice_cannot_be_written_past_the_filter()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Actor stranger = await house.FoundSecondPracticeAsync();

        await Assert.ThrowsAsync<InvalidOperationException>(() =>
            house.LookAsync(
                async records =>
                {
                    Records.Keeping.HorseRecord taken = await records
                        .Horses.IgnoreQueryFilters()
                        .FirstAsync(record => record.Id == horse.Id);
                    taken.Name = "Taken";
                    return await records.SaveChangesAsync();
                },
                stranger.PracticeId
            )
        );
    }

    private static string Code<T>(Outcome<T> outcome) => Assert.Single(outcome.Problems).Code;
}
