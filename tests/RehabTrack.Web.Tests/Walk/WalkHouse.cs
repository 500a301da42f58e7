using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Horses;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Start;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Web.Tests.Shared;

namespace RehabTrack.Web.Tests.Walk;

/// <summary>A running server with two practices: people of every role, their own records, those of a neighbour, and those of the other practice.</summary>
public sealed class WalkHouse : IAsyncLifetime
{
    private readonly Dictionary<Walker, HttpClient> _browsers = [];

    private readonly Dictionary<Whose, WalkRecords> _records = [];

    internal RunningApp App { get; } = new();

    internal Dictionary<Walker, Actor> People { get; } = [];

    /// <summary>The base address of the share link of a person, by their role.</summary>
    internal Dictionary<Walker, string> Links { get; } = [];

    internal HttpClient BrowserOf(Walker walker) => _browsers[walker];

    internal WalkRecords RecordsOf(Whose whose) => _records[whose];

    /// <summary>The words that stand in somebody's records.</summary>
    internal IEnumerable<string> Marks => _records.Values.Select(records => records.Mark);

    public async Task InitializeAsync()
    {
        await App.InitializeAsync();
        Actor vet = App.Vet;
        Actor stranger = await FoundPractice.RunAsync(
            App.Services.GetRequiredService<RecordsAccess>(),
            new FoundPractice.Founding(
                Guid.NewGuid(),
                "Walk",
                "Other Shore Equine",
                null,
                "Europe/Vienna",
                "en",
                "Runa Tolland",
                null,
                null,
                "{}"
            ),
            default
        );
        People[Walker.Vet] = vet;
        People[Walker.Stranger] = stranger;
        foreach (
            (Walker walker, Role role) in ((Walker, Role)[])
                [
                    (Walker.Administrator, Role.Administrator),
                    (Walker.Assistant, Role.Assistant),
                    (Walker.Trainer, Role.Trainer),
                    (Walker.Owner, Role.Owner),
                    (Walker.ReferringVet, Role.ReferringVet),
                ]
        )
        {
            People[walker] = await PersonAsync(vet, $"Person {role}", role, canSignIn: true);
        }

        // The calendar address of a practice is one: the later one takes the earlier one back.
        _records[Whose.Neighbours] = await WalkRecords.FillAsync(
            App.Services,
            vet,
            "NEIGHBOURMARK",
            await OthersAsync(vet, "NEIGHBOURMARK")
        );
        _records[Whose.Own] = await WalkRecords.FillAsync(
            App.Services,
            vet,
            "OWNMARK",
            new HorsePeopleIds(People[Walker.Owner].PersonId, People[Walker.Trainer].PersonId, People[Walker.ReferringVet].PersonId)
        );
        _records[Whose.OtherPractices] = await WalkRecords.FillAsync(
            App.Services,
            stranger,
            "OTHERMARK",
            await OthersAsync(stranger, "OTHERMARK")
        );
        ShareHouse house = new(App.Services, vet);
        Links[Walker.Owner] = (await house.LinkAsync(People[Walker.Owner].PersonId, HorseRelation.Owner, _records[Whose.Own].Horse)).Path;
        Links[Walker.Trainer] = (
            await house.LinkAsync(People[Walker.Trainer].PersonId, HorseRelation.Trainer, null, _records[Whose.Own].Yard)
        ).Path;
        Links[Walker.ReferringVet] = (await house.ReportLinkAsync(People[Walker.ReferringVet].PersonId, _records[Whose.Own].Report)).Path;
        _browsers[Walker.Nobody] = App.Browser();
        foreach ((Walker walker, Actor actor) in People)
        {
            _browsers[walker] = await App.BrowserAsync(actor);
        }
    }

    public async Task DisposeAsync()
    {
        foreach (HttpClient browser in _browsers.Values)
        {
            browser.Dispose();
        }

        await App.DisposeAsync();
    }

    private async Task<HorsePeopleIds> OthersAsync(Actor vet, string mark) =>
        new(
            (await PersonAsync(vet, $"Owner {mark}", Role.Owner, canSignIn: false)).PersonId,
            (await PersonAsync(vet, $"Trainer {mark}", Role.Trainer, canSignIn: false)).PersonId,
            (await PersonAsync(vet, $"Referring vet {mark}", Role.ReferringVet, canSignIn: false)).PersonId
        );

    private async Task<Actor> PersonAsync(Actor vet, string name, Role role, bool canSignIn)
    {
        Guid id = (
            await App
                .Services.GetRequiredService<SavePerson>()
                .ExecuteAsync(
                    vet,
                    new SavePersonInput
                    {
                        CommandId = Guid.NewGuid(),
                        Name = name,
                        Role = role,
                        CanSignIn = canSignIn,
                    }
                )
        ).Value.Id;
        return new Actor(vet.PracticeId, id, role, name);
    }
}
