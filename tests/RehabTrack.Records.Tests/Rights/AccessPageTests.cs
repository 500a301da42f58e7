using System.Collections;
using System.Reflection;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.People;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.Exercise;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Rights;

/// <summary>The page about access says what the code does: each cell, both ways.</summary>
public sealed class AccessPageTests
{
    /// <summary>Fields that say whether something else is set. They are not filled where it is.</summary>
    private static readonly string[] Marks =
    [
        nameof(HorseView.Archived),
        nameof(PracticeView.IntervalIsUsual),
        nameof(PracticeView.SettingsAreUsual),
        nameof(PracticeView.ErrorOrigins),
    ];

    [Fact]
    public void Each_cell_of_rights_is_the_one_of_the_code()
    {
        Same(AccessPage.ReachesOfCode(), AccessPage.Reaches(AccessPage.Text));
        Assert.Equal(AccessPage.Roles.Order(), Enum.GetValues<Role>().Order());
    }

    [Fact]
    public void Each_use_case_stands_beside_the_right_it_asks_for()
    {
        Same(AccessPage.UseCasesOfCode(), AccessPage.UseCases(AccessPage.Text));
        Same(AccessPage.AllRights.Select(right => right.ToString()), AccessPage.RightsWithUseCases(AccessPage.Text));
    }

    [Fact]
    public async Task Each_field_that_somebody_outside_reads_is_named()
    {
        await using ExerciseHouse at = await FilledAsync();
        Dictionary<Role, Actor> people = await PeopleAsync(at);
        List<string> found = [];
        foreach ((Role role, Actor actor) in people)
        {
            HorseView? horse = (await at.House.Get<GetHorse>().ExecuteAsync(actor, at.Horse)).ValueOrDefault;
            HorseRow? row = (await at.House.Get<FindHorses>().ExecuteAsync(actor, new FindHorsesInput())).ValueOrDefault?.Rows.Single();
            PracticeView? practice = (await at.House.Get<GetPractice>().ExecuteAsync(actor, NoInput.Value)).ValueOrDefault;
            YardHorse? yard = (await at.House.Get<GetYard>().ExecuteAsync(actor, NoInput.Value)).ValueOrDefault?.Single();
            found.AddRange(Read("horse", role, horse));
            found.AddRange(Read("horse in a list", role, row));
            found.AddRange(Read("practice", role, practice));
            found.AddRange(Read("today's permit", role, yard));
        }

        Assert.DoesNotContain(found, line => line.EndsWith(", vet: no", StringComparison.Ordinal));
        Same(found, AccessPage.Fields(AccessPage.Text));
    }

    [Theory]
    [InlineData("| practice | practice | practice | own horses |", "| practice | practice | practice | practice |")]
    [InlineData("| `SignExaminations` | sign", "| `SignEverything` | sign")]
    public void A_planted_wrong_cell_of_rights_is_found(string right, string wrong)
    {
        string planted = Planted(right, wrong);

        Assert.NotEmpty(Differences(AccessPage.ReachesOfCode(), AccessPage.Reaches(planted)));
    }

    [Theory]
    [InlineData("`SignDecision`", "`SignDecisions`")]
    [InlineData(", `SignPlan`", "")]
    public void A_planted_wrong_use_case_is_found(string right, string wrong) =>
        Assert.NotEmpty(Differences(AccessPage.UseCasesOfCode(), AccessPage.UseCases(Planted(right, wrong))));

    [Fact]
    public void A_planted_wrong_field_is_found()
    {
        string planted = Planted(
            "| horse | `Microchip` | reads | reads | reads | no |",
            "| horse | `Microchip` | reads | reads | reads | reads |"
        );

        Assert.Equal(
            ["horse, Microchip, trainer: no", "horse, Microchip, trainer: reads"],
            Differences(AccessPage.Fields(AccessPage.Text), AccessPage.Fields(planted)).Order(StringComparer.Ordinal)
        );
    }

    private static string Planted(string right, string wrong)
    {
        Assert.Contains(right, AccessPage.Text, StringComparison.Ordinal);
        return AccessPage.Text.Replace(right, wrong, StringComparison.Ordinal);
    }

    private static void Same(IEnumerable<string> code, IEnumerable<string> page)
    {
        string[] differences = [.. Differences(code, page)];
        Assert.True(differences.Length == 0, string.Join('\n', differences));
    }

    /// <summary>What stands on one side only.</summary>
    private static IEnumerable<string> Differences(IEnumerable<string> code, IEnumerable<string> page)
    {
        HashSet<string> different = [.. code];
        different.SymmetricExceptWith(page);
        return different;
    }

    private static IEnumerable<string> Read<T>(string what, Role role, T? view)
        where T : class =>
        typeof(T)
            .GetProperties(BindingFlags.Instance | BindingFlags.Public)
            .Where(property => property.GetMethod!.IsPublic && !Marks.Contains(property.Name))
            .Select(property => AccessPage.Field(what, property.Name, role, view is not null && IsFilled(property.GetValue(view))));

    private static bool IsFilled(object? value) =>
        value switch
        {
            null or "" => false,
            IEnumerable many and not string => many.Cast<object>().Any(),
            AnalysisSettings settings => settings != new AnalysisSettings(),
            ValueType one => !one.Equals(Activator.CreateInstance(one.GetType())),
            _ => true,
        };

    /// <summary>A horse of which everything is known that these views can tell.</summary>
    private static async Task<ExerciseHouse> FilledAsync()
    {
        ExerciseHouse at = await ExerciseHouse.BuildAsync();
        RecordsHouse house = at.House;
        Actor referring = await house.PersonAsync("Anwen Quill", Role.ReferringVet);
        Saved yard = await MustAsync(
            house
                .Get<SaveYard>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveYardInput
                    {
                        CommandId = Guid.NewGuid(),
                        Name = "Upper Yard",
                        Phone = "+43 1 5550123",
                    }
                )
        );
        HorseView horse = (await house.Get<GetHorse>().ExecuteAsync(house.Vet, at.Horse)).Value;
        await MustAsync(
            house
                .Get<SaveHorse>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveHorseInput
                    {
                        CommandId = Guid.NewGuid(),
                        Id = horse.Id,
                        Version = horse.Version,
                        Name = horse.Name,
                        Microchip = "999000000000001",
                        BirthDate = new DateOnly(2015, 4, 2),
                        Sex = Sex.Gelding,
                        Use = "eventing",
                        Markings = "bay, one white sock",
                        YardId = yard.Id,
                        OwnerId = at.Owner.PersonId,
                        TrainerId = at.Trainer.PersonId,
                        ReferringVetId = referring.PersonId,
                    }
                )
        );
        await MustAsync(
            house
                .Get<SaveHorsePhoto>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveHorsePhotoInput
                    {
                        CommandId = Guid.NewGuid(),
                        HorseId = at.Horse,
                        ContentType = "image/png",
                        Content = [1, 2, 3],
                    }
                )
        );
        PracticeView practice = (await house.Get<GetPractice>().ExecuteAsync(house.Vet, NoInput.Value)).Value;
        await MustAsync(
            house
                .Get<ChangePractice>()
                .ExecuteAsync(
                    house.Vet,
                    new ChangePracticeInput
                    {
                        CommandId = Guid.NewGuid(),
                        Version = practice.Version,
                        Name = practice.Name,
                        Phone = "+43 1 5550100",
                        TimeZone = practice.TimeZone,
                        Language = practice.Language,
                        RecheckIntervalDays = 50,
                        ShowChangeWhileEntering = true,
                        AccessKeptDays = 365,
                        ContactKeptDays = 400,
                        Settings = practice.Settings with { Error = practice.Settings.Error with { LesionAreaCv = 0.2 } },
                    }
                )
        );
        await house.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today.AddDays(-20), (16, 0.1), (18, 0.3), (20, 0)));
        await MustAsync(at.SignAsync(ExerciseHouse.Plan));
        await MustAsync(at.LogAsync(new DayLog { Date = ExerciseHouse.Today, Done = new OutingMinutes(20, 0, 0, 0) }));
        await MustAsync(at.ReportAsync());
        return at;
    }

    private static async Task<Dictionary<Role, Actor>> PeopleAsync(ExerciseHouse at)
    {
        HorseView horse = (await at.House.Get<GetHorse>().ExecuteAsync(at.House.Vet, at.Horse)).Value;
        return new Dictionary<Role, Actor>
        {
            [Role.Administrator] = await at.House.PersonAsync("Petra Lowe", Role.Administrator),
            [Role.Vet] = at.House.Vet,
            [Role.Assistant] = await at.House.PersonAsync("Pia Thorn", Role.Assistant),
            [Role.Trainer] = at.Trainer,
            [Role.Owner] = at.Owner,
            [Role.ReferringVet] = new Actor(
                at.House.Vet.PracticeId,
                horse.ReferringVet!.PersonId,
                Role.ReferringVet,
                horse.ReferringVet.Name
            ),
        };
    }

    private static async Task<T> MustAsync<T>(Task<Outcome<T>> asked)
    {
        Outcome<T> outcome = await asked;
        Assert.Empty(outcome.Problems);
        return outcome.Value;
    }
}
