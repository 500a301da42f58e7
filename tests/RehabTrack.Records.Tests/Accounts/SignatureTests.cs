using System.Reflection;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Accounts;

/// <summary>A signature asks afresh who signs, once each; a session opens nothing once it has ended.</summary>
public sealed class SignatureTests
{
    private static readonly DateOnly Day = new(2026, 11, 20);

    [Fact]
    public async Task These_commands_and_no_others_ask_afresh_who_it_is()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();

        Type[] asking = [.. RecordsServices.UseCases().Where(type => NeedsConfirmation(house.Get(type)))];

        Assert.Equal(
            [
                typeof(AmendExamination),
                typeof(CloseCase),
                typeof(ErasePerson),
                typeof(InvitePerson),
                typeof(SignDecision),
                typeof(SignExamination),
                typeof(SignPlan),
            ],
            asking.OrderBy(type => type.Name, StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task Who_works_here_is_changed_with_a_confirmation_and_a_contact_without()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor vet = await house.Get<SessionDoor>().BeginAsync(house.Vet, "test", isDemo: false);
        SavePersonInput assistant = new()
        {
            CommandId = Guid.NewGuid(),
            Name = "Pia Thorn",
            Role = Role.Assistant,
            CanSignIn = true,
        };

        Assert.Equal("not-confirmed", CodeOf(await house.Get<SavePerson>().ExecuteAsync(vet, assistant)));
        Assert.Null(
            CodeOf(
                await house
                    .Get<SavePerson>()
                    .ExecuteAsync(
                        vet,
                        new SavePersonInput
                        {
                            CommandId = Guid.NewGuid(),
                            Name = "Ada Reed",
                            Role = Role.Owner,
                        }
                    )
            )
        );
        await house.Get<SessionDoor>().ConfirmAsync(vet);
        Saved added = (await house.Get<SavePerson>().ExecuteAsync(vet, assistant)).Value;

        RecordInput away = new(Guid.NewGuid(), added.Id, added.Version);
        Assert.Equal("not-confirmed", CodeOf(await house.Get<ArchivePerson>().ExecuteAsync(vet, away)));
        await house.Get<SessionDoor>().ConfirmAsync(vet);
        Saved archived = (await house.Get<ArchivePerson>().ExecuteAsync(vet, away)).Value;

        RecordInput back = new(Guid.NewGuid(), archived.Id, archived.Version);
        Assert.Equal("not-confirmed", CodeOf(await house.Get<BringBackPerson>().ExecuteAsync(vet, back)));
        await house.Get<SessionDoor>().ConfirmAsync(vet);
        Assert.Null(CodeOf(await house.Get<BringBackPerson>().ExecuteAsync(vet, back)));
    }

    [Fact]
    public async Task A_signature_whose_answer_was_lost_is_answered_again_without_a_question()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Actor vet, SavedDraft first, _) = await TwoDraftsAsync(house);
        SignExaminationInput wish = new(Guid.NewGuid(), first.Id, first.Version);
        await house.Get<SessionDoor>().ConfirmAsync(vet);

        var signed = await house.Get<SignExamination>().ExecuteAsync(vet, wish);

        Assert.Equal(signed.Value, (await house.Get<SignExamination>().ExecuteAsync(vet, wish)).Value);
    }

    [Fact]
    public async Task Two_who_sign_at_once_do_not_share_one_confirmation()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Actor vet, SavedDraft first, SavedDraft second) = await TwoDraftsAsync(house);
        await house.Get<SessionDoor>().ConfirmAsync(vet);

        string?[] answers = await Task.WhenAll(Task.Run(() => SignAsync(house, vet, first)), Task.Run(() => SignAsync(house, vet, second)));

        Assert.Single(answers, answer => answer is null);
        Assert.Single(answers, answer => answer == "not-confirmed");
    }

    [Fact]
    public async Task Who_works_in_an_open_page_is_not_taken_for_idle()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor vet = await house.Get<SessionDoor>().BeginAsync(house.Vet, "test", isDemo: false);
        TimeSpan step = new SignInSettings().IdleTime * 0.6;

        house.Time.Advance(step);
        Assert.Null(await AskAsync(house, vet));
        house.Time.Advance(step);

        Assert.Null(await AskAsync(house, vet));
    }

    [Fact]
    public async Task One_confirmation_serves_one_signature()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Actor vet, SavedDraft first, SavedDraft second) = await TwoDraftsAsync(house);

        Assert.Equal("not-confirmed", await SignAsync(house, vet, first));
        await house.Get<SessionDoor>().ConfirmAsync(vet);
        Assert.Null(await SignAsync(house, vet, first));
        Assert.Equal("not-confirmed", await SignAsync(house, vet, second));
    }

    [Fact]
    public async Task A_confirmation_that_was_not_used_in_time_serves_none()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Actor vet, SavedDraft first, _) = await TwoDraftsAsync(house);

        await house.Get<SessionDoor>().ConfirmAsync(vet);
        house.Time.Advance(new SignInSettings().ConfirmTime);

        Assert.Equal("not-confirmed", await SignAsync(house, vet, first));
    }

    [Fact]
    public async Task A_signature_that_was_refused_for_something_else_uses_no_confirmation_up()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Actor vet, SavedDraft first, _) = await TwoDraftsAsync(house);

        await house.Get<SessionDoor>().ConfirmAsync(vet);
        Assert.NotNull(await SignAsync(house, vet, first with { Id = Guid.NewGuid() }));

        Assert.Null(await SignAsync(house, vet, first));
    }

    [Fact]
    public async Task Somebody_elses_confirmation_serves_nobody()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Actor vet, SavedDraft first, _) = await TwoDraftsAsync(house);
        Actor other = await house.Get<SessionDoor>().BeginAsync(await house.PersonAsync("Sorrel Dunn", Role.Vet), "test", isDemo: false);

        await house.Get<SessionDoor>().ConfirmAsync(other);
        await house.Get<SessionDoor>().ConfirmAsync(other with { SessionId = vet.SessionId });

        Assert.Equal("not-confirmed", await SignAsync(house, vet, first));
    }

    [Theory]
    [InlineData("idle")]
    [InlineData("long")]
    [InlineData("ended")]
    [InlineData("role")]
    [InlineData("stranger")]
    public async Task A_session_that_has_ended_opens_nothing(string how)
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        SignInSettings settings = new();
        Actor person = await house.PersonAsync("Sorrel Dunn", Role.Assistant);
        Actor actor = await house.Get<SessionDoor>().BeginAsync(person, "test", isDemo: false);
        Assert.True(await house.Get<SessionDoor>().LivesAsync(actor));
        Assert.Null(await AskAsync(house, actor));

        switch (how)
        {
            case "idle":
                house.Time.Advance(settings.IdleTime);
                break;
            case "long":
                for (TimeSpan passed = TimeSpan.Zero; passed < settings.LongestSession; passed += TimeSpan.FromHours(6))
                {
                    house.Time.Advance(TimeSpan.FromHours(6));
                    await house.Get<SessionDoor>().LivesAsync(actor);
                }

                break;
            case "ended":
                Assert.Equal(
                    1,
                    (
                        await house
                            .Get<EndSession>()
                            .ExecuteAsync(house.Vet, new EndSessionInput(Guid.NewGuid(), null, person.PersonId, null))
                    ).Value
                );
                break;
            case "role":
                await ChangeRoleAsync(house, person);
                break;
            default:
                actor = actor with { PersonId = house.Vet.PersonId, Role = Role.Vet };
                break;
        }

        Assert.False(await house.Get<SessionDoor>().LivesAsync(actor));
        Assert.Equal("not-allowed", await AskAsync(house, actor));
    }

    [Fact]
    public async Task An_assistant_ends_no_session_of_somebody_else()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor vet = await house.Get<SessionDoor>().BeginAsync(house.Vet, "test", isDemo: false);
        Actor assistant = await house.PersonAsync("Sorrel Dunn", Role.Assistant);

        Outcome<int> refused = await house
            .Get<EndSession>()
            .ExecuteAsync(assistant, new EndSessionInput(Guid.NewGuid(), null, vet.PersonId, null));

        Assert.Equal("not-allowed", Assert.Single(refused.Problems).Code);
        Assert.True(await house.Get<SessionDoor>().LivesAsync(vet));
    }

    private static async Task<(Actor Vet, SavedDraft First, SavedDraft Second)> TwoDraftsAsync(RecordsHouse house)
    {
        Saved horse = await house.HorseAsync();
        Saved injury = await house.CaseAsync(horse.Id);
        SavedDraft first = await house.DraftAsync(injury.Id, Wishes.Content(Day.AddDays(-60), (16, 0), (18, 0.4), (20, 0)));
        SavedDraft second = await house.DraftAsync(injury.Id, Wishes.Content(Day, (16, 0), (18, 0.3), (20, 0)));
        return (await house.Get<SessionDoor>().BeginAsync(house.Vet, "test", isDemo: false), first, second);
    }

    private static async Task<string?> SignAsync(RecordsHouse house, Actor vet, SavedDraft draft) =>
        CodeOf(await house.Get<SignExamination>().ExecuteAsync(vet, new SignExaminationInput(Guid.NewGuid(), draft.Id, draft.Version)));

    private static async Task<string?> AskAsync(RecordsHouse house, Actor actor) =>
        CodeOf(await house.Get<ListSessions>().ExecuteAsync(actor, NoInput.Value));

    private static string? CodeOf<T>(Outcome<T> outcome) => outcome.Problems is [Problem first, ..] ? first.Code : null;

    private static async Task ChangeRoleAsync(RecordsHouse house, Actor person)
    {
        PersonView view = (await house.Get<GetPerson>().ExecuteAsync(house.Vet, person.PersonId)).Value;
        Outcome<Saved> saved = await house
            .Get<SavePerson>()
            .ExecuteAsync(
                house.Vet,
                new SavePersonInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = view.Id,
                    Version = view.Version,
                    Name = view.Name,
                    Role = Role.Trainer,
                    Language = view.Language,
                    CanSignIn = true,
                }
            );
        Assert.True(saved.Succeeded);
    }

    // Of what writes: a question is never asked afresh.
    private static bool NeedsConfirmation(object useCase) =>
        useCase.GetType().GetProperty("NeedsConfirmation", BindingFlags.Instance | BindingFlags.NonPublic) is { } asks
        && (bool)asks.GetValue(useCase)!;
}
