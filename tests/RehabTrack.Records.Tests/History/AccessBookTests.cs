using RehabTrack.Records.Examinations;
using RehabTrack.Records.History;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.History;

public sealed class AccessBookTests
{
    [Fact]
    public async Task A_note_tells_who_when_what_and_no_more_than_a_few_words()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house
            .Get<AccessBook>()
            .NoteAsync(house.Vet.PracticeId, house.Vet.PersonId, AccessEvent.SignedIn, $"from the\nyard {new string('x', 300)}");
        await house.Get<AccessBook>().NoteAsync(house.Vet.PracticeId, null, AccessEvent.SignInRefused);

        ChangeRecord[] lines = [.. (await house.LinesAsync()).Where(line => line.Kind == "Access")];

        Assert.Equal([house.Vet.PersonId, Guid.Empty], lines.Select(line => line.PersonId));
        Assert.Equal(house.Time.GetUtcNow().UtcDateTime, lines[0].At);
        Assert.StartsWith("""{"event":"SignedIn","detail":"from theyard xxx""", lines[0].AfterJson, StringComparison.Ordinal);
        Assert.True(lines[0].AfterJson.Length < 250);
        Assert.Equal("""{"event":"SignInRefused"}""", lines[1].AfterJson);
        Assert.Null((await house.VerifyAsync()).FirstBreak);
    }

    [Fact]
    public async Task What_belongs_to_no_practice_has_a_trail_of_its_own()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.Get<AccessBook>().NoteAsync(Guid.Empty, null, AccessEvent.SignInRefused);

        ChangeRecord line = Assert.Single(await house.LinesAsync(Guid.Empty));

        Assert.Equal(1, line.Number);
        Assert.DoesNotContain(await house.LinesAsync(), each => each.Kind == "Access");
    }

    [Fact]
    public async Task A_refused_right_is_noted_with_the_use_case_and_the_record()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor owner = await house.PersonAsync("Wren Ashby", Role.Owner);
        Guid asked = Guid.NewGuid();

        Assert.Equal("not-allowed", (await house.Get<GetExamination>().ExecuteAsync(owner, asked)).Problems[0].Code);

        ChangeRecord line = Assert.Single(await house.LinesAsync(), each => each.Kind == "Access");
        Assert.Equal((owner.PersonId, "GetExamination", asked), (line.PersonId, line.UseCase, line.RecordId));
        Assert.Equal("""{"event":"RightRefused"}""", line.AfterJson);
        Assert.Null((await house.VerifyAsync()).FirstBreak);
    }

    [Fact]
    public async Task The_same_refusal_within_a_minute_is_noted_once_and_another_one_by_itself()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor owner = await house.PersonAsync("Wren Ashby", Role.Owner);
        async Task<int> AskAsync()
        {
            await house.Get<GetExamination>().ExecuteAsync(owner, Guid.NewGuid());
            return (await house.LinesAsync()).Count(line => line.Kind == "Access");
        }

        Assert.Equal(1, await AskAsync());
        Assert.Equal(1, await AskAsync());
        await house.Get<ListPeople>().ExecuteAsync(owner, new ListPeopleInput());
        Assert.Equal(2, await AskAsync());
        house.Time.Advance(TimeSpan.FromSeconds(61));
        Assert.Equal(3, await AskAsync());
    }

    [Fact]
    public async Task What_is_allowed_is_not_noted()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();

        Outcome<HorsePage> found = await house.Get<FindHorses>().ExecuteAsync(house.Vet, new FindHorsesInput());

        Assert.True(found.Succeeded);
        Assert.DoesNotContain(await house.LinesAsync(), line => line.Kind == "Access");
    }
}
