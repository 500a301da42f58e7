using RehabTrack.Records.Accounts;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Accounts;

public sealed class InvitationTests
{
    private static readonly string Hash = new('d', 64);

    [Fact]
    public async Task An_invitation_opens_until_its_time_is_over_and_then_answers_as_one_that_never_was()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor person = await house.PersonAsync("Wren Ashby", Role.Trainer);
        Assert.True(
            (
                await house.Get<InvitePerson>().ExecuteAsync(house.Vet, new InvitePersonInput(Guid.NewGuid(), person.PersonId, Hash, false))
            ).Succeeded
        );
        InvitationDoor door = house.Get<InvitationDoor>();

        house.Time.Advance(new SignInSettings().InvitationTime - TimeSpan.FromSeconds(1));
        Assert.Equal(person.PersonId, (await door.FindAsync(Hash))?.Person.PersonId);

        house.Time.Advance(TimeSpan.FromSeconds(1));
        Assert.Null(await door.FindAsync(Hash));
        Assert.Equal("not-found", Assert.Single((await door.UseAsync(Hash, new AccountChoice("wren", "hash"))).Problems).Code);
    }

    /// <summary>Our choice, shared/sign-in.json; docs/security.md 6.4.1 names it.</summary>
    [Fact]
    public void Its_time_is_72_hours() => Assert.Equal(72, new SignInSettings().InvitationTime.TotalHours);
}
