using Bunit;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components.People;
using RehabTrack.Web.Features.People;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.People;

/// <summary>A person and a yard that two people change at once.</summary>
public sealed class SharedPeopleTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task Of_a_person_what_both_changed_is_chosen_and_the_rest_comes_together()
    {
        SavePersonInput person = new()
        {
            CommandId = Guid.NewGuid(),
            Name = "Alder Pike",
            Role = Role.Owner,
        };
        Saved saved = await kept.DoneAsync<SavePerson, SavePersonInput, Saved>(person);
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<PersonEditor> page = tab.Render<PersonEditor>(with => with.Add(one => one.Id, saved.Id));
        await page.TypeAsync("phone", "0043 1 111");
        await page.TypeAsync("name", "Alder Pyke");
        await kept.DoneAsync<SavePerson, SavePersonInput, Saved>(
            person with
            {
                CommandId = Guid.NewGuid(),
                Id = saved.Id,
                Version = saved.Version,
                Role = Role.Trainer,
                Phone = "0043 1 222",
                CanSignIn = true,
            }
        );

        await page.Find("form").SubmitAsync();

        page.AssertTaken(
            kept.Vet.Name,
            $"{PersonForm.Role}: {RoleNames.Of(Role.Trainer)}",
            $"{PersonForm.CanSignIn}: {SuggestionTexts.Yes}"
        );
        page.AssertAsks("phone", "0043 1 111", "0043 1 222");
        Assert.True(page.Find("#can-sign-in").HasAttribute("checked"));
        await page.ChooseAsync("phone", theirs: false);
        await page.Find("form").SubmitAsync();

        PersonView now = await kept.DoneAsync<GetPerson, Guid, PersonView>(saved.Id);
        Assert.Equal(("Alder Pyke", Role.Trainer, "0043 1 111", true), (now.Name, now.Role, now.Phone, now.CanSignIn));
        Assert.Empty(page.FindAll(".met"));
    }

    [Fact]
    public async Task A_tick_that_only_one_moved_is_never_asked_about()
    {
        SavePersonInput person = new()
        {
            CommandId = Guid.NewGuid(),
            Name = "Sedge Holm",
            Role = Role.Trainer,
        };
        Saved saved = await kept.DoneAsync<SavePerson, SavePersonInput, Saved>(person);
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<PersonEditor> page = tab.Render<PersonEditor>(with => with.Add(one => one.Id, saved.Id));
        await page.TypeAsync("can-sign-in", true);
        await kept.DoneAsync<SavePerson, SavePersonInput, Saved>(
            person with
            {
                CommandId = Guid.NewGuid(),
                Id = saved.Id,
                Version = saved.Version,
                Mail = "sedge@holm.example",
            }
        );

        await page.Find("form").SubmitAsync();
        page.AssertTaken(kept.Vet.Name, "sedge@holm.example");
        await page.Find("form").SubmitAsync();

        PersonView now = await kept.DoneAsync<GetPerson, Guid, PersonView>(saved.Id);
        Assert.Equal((true, "sedge@holm.example"), (now.CanSignIn, now.Mail));
    }

    [Fact]
    public async Task Of_a_yard_what_both_changed_is_chosen_and_the_rest_comes_together()
    {
        SaveYardInput yard = new() { CommandId = Guid.NewGuid(), Name = "Mill End" };
        Saved saved = await kept.DoneAsync<SaveYard, SaveYardInput, Saved>(yard);
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<YardEditor> page = tab.Render<YardEditor>(with => with.Add(one => one.Id, saved.Id));
        await page.TypeAsync("address", "by the mill");
        await kept.DoneAsync<SaveYard, SaveYardInput, Saved>(
            yard with
            {
                CommandId = Guid.NewGuid(),
                Id = saved.Id,
                Version = saved.Version,
                Phone = "0043 2 333",
                Address = "behind the mill",
            }
        );

        await page.Find("form").SubmitAsync();

        page.AssertTaken(kept.Vet.Name, $"{PersonForm.Phone}: 0043 2 333");
        page.AssertAsks("address", "by the mill", "behind the mill");
        await page.ChooseAsync("address", theirs: false);
        await page.Find("form").SubmitAsync();
        YardView now = (await kept.DoneAsync<ListYards, NoInput, IReadOnlyList<YardView>>(NoInput.Value)).First(one => one.Id == saved.Id);
        Assert.Equal(("0043 2 333", "by the mill"), (now.Phone, now.Address));
    }
}
