using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.Bookings;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Exercise;

/// <summary>A concern reaches the responsible vet, and the one who stands in.</summary>
public sealed class ListConcernsTests
{
    private static async Task<IReadOnlyList<WaitingConcern>> ListAsync(RecordsHouse house, Actor who) =>
        (await house.Get<ListConcerns>().ExecuteAsync(who, NoInput.Value)).Value;

    private static async Task<Guid> ReportedAsync(RecordsHouse house, string name, Actor? vet)
    {
        Guid horse = (await house.HorseAsync(name)).Id;
        await house
            .Get<OpenCase>()
            .ExecuteAsync(
                vet ?? await house.PersonAsync($"Desk of {name}", Role.Assistant),
                new OpenCaseInput
                {
                    CommandId = Guid.NewGuid(),
                    HorseId = horse,
                    Limb = Limb.LeftHind,
                    Structure = Structure.SuspensoryLigament,
                }
            );
        await house.Get<ReportConcern>().ExecuteAsync(house.Vet, new ReportConcernInput(Guid.NewGuid(), horse, "warm", "Oona Pell"));
        house.Time.Advance(TimeSpan.FromMinutes(1));
        return horse;
    }

    private static Task CoverAsync(RecordsHouse house, Actor away, Actor covering) =>
        house
            .Get<SaveCover>()
            .ExecuteAsync(
                house.Vet,
                new SaveCoverInput(Guid.NewGuid(), away.PersonId, covering.PersonId, Diary.Today, Diary.Today.AddDays(3))
            );

    [Fact]
    public async Task Those_of_the_reader_and_of_vets_they_stand_in_for_come_first_then_what_nobody_saw_then_the_latest()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor other = await house.PersonAsync("Runa Tolland", Role.Vet);
        Actor away = await house.PersonAsync("Sorrel Dunn", Role.Vet);
        await ReportedAsync(house, "Own", house.Vet);
        await ReportedAsync(house, "Covered", away);
        await ReportedAsync(house, "Early, of another", other);
        await ReportedAsync(house, "Nobody's", null);
        await ReportedAsync(house, "Seen, of another", other);
        await CoverAsync(house, away, house.Vet);
        WaitingConcern seen = (await ListAsync(house, house.Vet)).Single(concern => concern.HorseName == "Seen, of another");
        await house.Get<SeeConcern>().ExecuteAsync(other, new RecordInput(Guid.NewGuid(), seen.Id, seen.Version));

        IReadOnlyList<WaitingConcern> listed = await ListAsync(house, house.Vet);

        Assert.Equal(
            [("Covered", true), ("Own", true), ("Nobody's", false), ("Early, of another", false), ("Seen, of another", false)],
            listed.Select(concern => (concern.HorseName, concern.IsForReader))
        );
        Assert.Equal([new ConcernVet(away.PersonId, "Sorrel Dunn", house.Vet.PersonId, house.Vet.Name)], listed[0].Vets);
        Assert.Equal(("warm", "Oona Pell", "Runa Tolland"), (listed[0].Line.Words!.Words, listed[0].Line.OnBehalfOf, listed[4].SeenBy));
        Assert.Empty(listed[2].Vets);
    }

    [Fact]
    public async Task Cover_that_is_over_reaches_nobody()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor away = await house.PersonAsync("Sorrel Dunn", Role.Vet);
        await ReportedAsync(house, "Covered", away);
        await CoverAsync(house, away, house.Vet);

        house.Time.Advance(TimeSpan.FromDays(4));

        WaitingConcern concern = Assert.Single(await ListAsync(house, house.Vet));
        Assert.Equal((false, (Guid?)null), (concern.IsForReader, concern.Vets[0].CoveringId));
    }

    [Fact]
    public async Task A_signature_after_it_answers_a_concern()
    {
        await using ExerciseHouse house = await ExerciseHouse.BuildAsync();
        await house.SignAsync(ExerciseHouse.Plan);
        await house.ReportAsync();
        Assert.Single(await ListAsync(house.House, house.House.Vet));

        await house.DecideAsync(DecisionKind.Hold);

        Assert.Empty(await ListAsync(house.House, house.House.Vet));
    }

    [Fact]
    public async Task The_letter_goes_to_responsible_and_covering_vet_with_an_address_and_to_every_vet_where_none_is_named()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor away = await VetAsync(house, "Sorrel Dunn", "sorrel@practice.example");
        Actor covering = await VetAsync(house, "Runa Tolland", "runa@practice.example");
        await VetAsync(house, "Ansel Roke", "ansel@practice.example");
        await CoverAsync(house, away, covering);

        ConcernLetter named = await LetterAsync(house, await ReportedAsync(house, "Thistle Vane", away));
        ConcernLetter unnamed = await LetterAsync(house, await ReportedAsync(house, "Marram Bay", null));

        Assert.Equal(["runa@practice.example", "sorrel@practice.example"], named.Readers.Select(reader => reader.Mail));
        Assert.Equal(["Ansel Roke", "Runa Tolland", "Sorrel Dunn"], unnamed.Readers.Select(reader => reader.Name));
        Assert.Equal(("Thistle Vane", "warm"), (named.HorseName, named.Line.Words!.Words));
    }

    [Fact]
    public async Task Only_who_stands_beside_the_horse_reads_the_letter_and_only_of_a_concern()
    {
        await using ExerciseHouse house = await ExerciseHouse.BuildAsync();
        await house.SignAsync(ExerciseHouse.Plan);
        Guid concern = (await house.ReportAsync()).Value.Id;
        Actor stranger = await house.House.PersonAsync("Wren Ashby", Role.Trainer);
        GetConcernLetter letter = house.House.Get<GetConcernLetter>();

        Assert.True((await letter.ExecuteAsync(house.Trainer, concern)).Succeeded);
        Assert.Equal("not-found", (await letter.ExecuteAsync(stranger, concern)).Codes());
        Assert.Equal("not-found", (await letter.ExecuteAsync(house.Trainer, (await house.ViewAsync()).Lines[0].Id)).Codes());
    }

    private static async Task<Actor> VetAsync(RecordsHouse house, string name, string mail) =>
        new(house.Vet.PracticeId, (await house.AddAsync(name, Role.Vet, mail: mail, canSignIn: true)).Id, Role.Vet, name);

    private static async Task<ConcernLetter> LetterAsync(RecordsHouse house, Guid horse) =>
        (
            await house
                .Get<GetConcernLetter>()
                .ExecuteAsync(house.Vet, (await ListAsync(house, house.Vet)).Single(concern => concern.HorseId == horse).Line.Id)
        ).Value;
}
