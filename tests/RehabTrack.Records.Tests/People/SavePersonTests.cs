using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.People;

public sealed class SavePersonTests
{
    [Fact]
    public async Task An_assistant_adds_owners_and_makes_nobody_staff_or_signed_in()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor assistant = await house.PersonAsync("Pip Danvers", Role.Assistant);

        Outcome<Saved> owner = await SaveAsync(house, assistant, Input("Wren Ashby", Role.Owner));
        Outcome<Saved> vet = await SaveAsync(house, assistant, Input("Wren Ashby", Role.Vet));
        Outcome<Saved> signedIn = await SaveAsync(house, assistant, Input("Wren Ashby", Role.Owner) with { CanSignIn = true });

        Assert.True(owner.Succeeded);
        Assert.Equal("vet-only", Assert.Single(vet.Problems).Code);
        Assert.Equal("vet-only", Assert.Single(signedIn.Problems).Code);
    }

    [Fact]
    public async Task Nobody_shuts_themselves_out()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        PersonView self = (await house.Get<GetPerson>().ExecuteAsync(house.Vet, house.Vet.PersonId)).Value;

        Outcome<Saved> demoted = await SaveAsync(
            house,
            house.Vet,
            Input(self.Name, Role.Assistant) with
            {
                Id = self.Id,
                Version = self.Version,
                CanSignIn = true,
            }
        );
        Outcome<Saved> archived = await house
            .Get<ArchivePerson>()
            .ExecuteAsync(house.Vet, new RecordInput(Guid.NewGuid(), self.Id, self.Version));

        Assert.Equal("own-sign-in", Assert.Single(demoted.Problems).Code);
        Assert.Equal("own-sign-in", Assert.Single(archived.Problems).Code);
    }

    [Fact]
    public async Task People_are_found_without_case_and_accents()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await SaveAsync(house, house.Vet, Input("Zoë Strauß", Role.Owner) with { Mail = "zoe@post.example" });
        await SaveAsync(house, house.Vet, Input("Ömer Łąka", Role.Trainer));

        async Task<string> FindAsync(string query) =>
            string.Join(
                ',',
                (await house.Get<ListPeople>().ExecuteAsync(house.Vet, new ListPeopleInput { Query = query })).Value.Select(person =>
                    person.Name
                )
            );

        Assert.Equal("Zoë Strauß", await FindAsync("ZOE strauss"));
        Assert.Equal("Ömer Łąka", await FindAsync("omer laka"));
        Assert.Equal("Zoë Strauß", await FindAsync("zoe@post"));
        Assert.Equal("", await FindAsync("zoe laka"));
    }

    [Theory]
    [InlineData("no-at.example", "mail-unreadable")]
    [InlineData("two@@at.example", "mail-unreadable")]
    [InlineData("a@b", "mail-unreadable")]
    [InlineData("a b@post.example", "mail-unreadable")]
    [InlineData("a@post.example", null)]
    public async Task A_mail_address_has_the_shape_of_one(string mail, string? code)
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();

        Outcome<Saved> saved = await SaveAsync(house, house.Vet, Input("Wren Ashby", Role.Owner) with { Mail = mail });

        Assert.Equal(code, saved.Problems is [var first, ..] ? first.Code : null);
    }

    [Fact]
    public async Task What_is_too_long_to_be_kept_is_said_once_and_not_read_back()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        string pasted = new('p', 10_000);

        Outcome<Saved> saved = await SaveAsync(house, house.Vet, Input("Wren Ashby", Role.Owner) with { Phone = pasted, Mail = pasted });

        Assert.Equal(
            [("phone", "text-too-long"), ("mail", "text-too-long")],
            saved.Problems.Select(problem => (problem.Field, problem.Code))
        );
        Assert.DoesNotContain(saved.Problems, problem => problem.Arguments.Contains(pasted));
    }

    [Fact]
    public async Task The_door_names_those_who_may_sign_in_and_nobody_else()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.PersonAsync("Pip Danvers", Role.Assistant);
        Actor contact = await house.PersonAsync("Wren Ashby", Role.Owner, canSignIn: false);

        IReadOnlyList<Actor> doors = await house.Get<SignInDoor>().ListAsync();

        Assert.Equal(["Edda Marrow", "Pip Danvers"], doors.Select(actor => actor.Name));
        Assert.Equal(doors[1], await house.Get<SignInDoor>().FindAsync(doors[1].PersonId));
        Assert.Null(await house.Get<SignInDoor>().FindAsync(contact.PersonId));
    }

    private static SavePersonInput Input(string name, Role role) =>
        new()
        {
            CommandId = Guid.NewGuid(),
            Name = name,
            Role = role,
        };

    private static Task<Outcome<Saved>> SaveAsync(RecordsHouse house, Actor actor, SavePersonInput input) =>
        house.Get<SavePerson>().ExecuteAsync(actor, input);
}
