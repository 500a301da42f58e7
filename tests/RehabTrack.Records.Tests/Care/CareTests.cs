using RehabTrack.Rechecks.Care;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Care;
using RehabTrack.Records.History;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.Exercise;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Care;

/// <summary>Treatments, medicines and signs are kept, corrected and put away, and never leave the practice.</summary>
public sealed class CareTests
{
    private static readonly CareEntry Injection = new()
    {
        Kind = CareKind.PlateletRichPlasma,
        From = ExerciseHouse.Today.AddDays(-3),
        Words = "4 ml",
    };

    private static Task<Outcome<Saved>> SaveAsync(ExerciseHouse at, CareEntry entry, Saved? kept = null, Actor? who = null) =>
        at
            .House.Get<SaveCare>()
            .ExecuteAsync(
                who ?? at.House.Vet,
                new SaveCareInput
                {
                    CommandId = Guid.NewGuid(),
                    HorseId = at.Horse,
                    Id = kept?.Id,
                    Version = kept?.Version,
                    Entry = entry with { CaseId = at.Case.ToString() },
                }
            );

    private static async Task<IReadOnlyList<CareView>> ListAsync(ExerciseHouse at) =>
        (await at.House.Get<ListCare>().ExecuteAsync(at.House.Vet, at.Horse)).Value;

    [Fact]
    public async Task What_is_entered_is_corrected_under_a_second_name_and_what_it_was_stays_in_the_history()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Actor assistant = await at.House.PersonAsync("Bryn Castor", Role.Assistant);
        Saved kept = (await SaveAsync(at, Injection)).Value;
        Assert.True((await SaveAsync(at, Injection with { Words = "5 ml" }, kept, assistant)).Succeeded);

        CareView care = Assert.Single(await ListAsync(at));
        Assert.Equal(("5 ml", "Edda Marrow", "Bryn Castor"), (care.Entry.Words, care.EnteredBy, care.CorrectedBy));
        Assert.Equal("changed-meanwhile", Assert.Single((await SaveAsync(at, Injection, kept)).Problems).Code);
        IReadOnlyList<ChangeView> changes = (await at.House.Get<GetChanges>().ExecuteAsync(at.House.Vet, at.Case)).Value;
        Assert.Contains(
            changes.Where(change => change.Kind == "Care").SelectMany(change => change.Fields),
            field => field.Before?.Contains("4 ml", StringComparison.Ordinal) == true
        );
    }

    [Fact]
    public async Task An_entry_is_put_away_with_a_reason()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Saved kept = (await SaveAsync(at, Injection)).Value;
        Outcome<Saved> without = await at
            .House.Get<ArchiveCare>()
            .ExecuteAsync(at.House.Vet, new ArchiveCareInput(Guid.NewGuid(), kept.Id, kept.Version, " "));
        Assert.Equal("reason", Assert.Single(without.Problems).Field);
        Assert.Single(await ListAsync(at));

        Assert.True(
            (
                await at
                    .House.Get<ArchiveCare>()
                    .ExecuteAsync(at.House.Vet, new ArchiveCareInput(Guid.NewGuid(), kept.Id, kept.Version, "Another horse"))
            ).Succeeded
        );
        Assert.Empty(await ListAsync(at));
    }

    [Fact]
    public async Task A_stand_down_date_is_the_vets_own()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Actor assistant = await at.House.PersonAsync("Bryn Castor", Role.Assistant);
        CareEntry dated = Injection with { StandDownUntil = ExerciseHouse.Today.AddDays(30) };

        Assert.Equal(
            ("standDownUntil", "vet-only"),
            (await SaveAsync(at, dated, who: assistant)).Problems.Select(problem => (problem.Field, problem.Code)).Single()
        );
        Saved kept = (await SaveAsync(at, dated)).Value;
        Assert.True((await SaveAsync(at, dated with { Words = "corrected" }, kept, assistant)).Succeeded);
        Assert.Equal("Edda Marrow", Assert.Single(await ListAsync(at)).StandDownBy);
    }

    [Fact]
    public async Task Neither_trainer_nor_owner_can_read_it_and_the_permit_stays_as_it_is()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        await at.SignAsync(ExerciseHouse.Plan);
        Permit before = (await at.YardAsync()).Permit;
        Assert.True((await SaveAsync(at, Injection)).Succeeded);

        Assert.Equal(before.Work, (await at.YardAsync()).Permit.Work);
        foreach (Actor outside in new[] { at.Trainer, at.Owner })
        {
            Assert.Equal("not-allowed", (await at.House.Get<ListCare>().ExecuteAsync(outside, at.Horse)).Problems.Single().Code);
            Assert.Equal("not-allowed", (await SaveAsync(at, Injection, who: outside)).Problems.Single().Code);
        }
    }
}
