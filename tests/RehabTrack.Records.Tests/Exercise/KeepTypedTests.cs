using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Exercise;

/// <summary>A form as it is being filled in, on more than one device.</summary>
public sealed class KeepTypedTests
{
    [Fact]
    public async Task Two_devices_of_one_person_keep_what_the_other_typed_in_other_fields()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();

        await KeepAsync(at, ("reason", "fills in"), ("from", "2026-11-25"));
        await KeepAsync(at, ("owner", "walks on"));
        await KeepAsync(at, ("reason", "fills in well"));

        Assert.Equal([("from", "2026-11-25"), ("owner", "walks on"), ("reason", "fills in well")], await OwnAsync(at));
    }

    [Fact]
    public async Task A_field_that_fell_away_is_gone_and_the_last_one_takes_the_form_with_it()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        await KeepAsync(at, ("kind", "Advance"), ("place", "2"));

        await KeepAsync(at, ("place", null), ("kind", "Hold"));
        Assert.Equal([("kind", "Hold")], await OwnAsync(at));

        await KeepAsync(at, ("kind", null));
        Assert.Empty(await OwnAsync(at));
    }

    [Fact]
    public async Task What_is_begun_afresh_keeps_nothing_of_before()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        await KeepAsync(at, ("reason", "fills in"), ("owner", "walks on"));

        await at.House.Get<KeepTyped>().ExecuteAsync(at.House.Vet, InputOf(at, [("owner", "trots on")]) with { IsAfresh = true });

        Assert.Equal([("owner", "trots on")], await OwnAsync(at));
    }

    [Fact]
    public async Task More_fields_than_any_form_has_are_refused_however_few_come_at_a_time_and_what_was_kept_stays()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        await KeepAsync(at, [.. Enumerable.Range(0, 200).Select(number => ($"field{number}", (string?)"x"))]);

        Outcome<Saved> refused = await at.House.Get<KeepTyped>().ExecuteAsync(at.House.Vet, InputOf(at, [("one-more", "x")]));

        Assert.Equal("typed-too-many", Assert.Single(refused.Problems).Code);
        Assert.Equal(200, (await OwnAsync(at)).Length);
    }

    [Fact]
    public async Task What_one_types_no_other_changes()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Actor other = await at.House.PersonAsync("Sorrel Dunn", Role.Vet);
        await KeepAsync(at, ("reason", "fills in"));

        Assert.True((await at.House.Get<KeepTyped>().ExecuteAsync(other, InputOf(at, [("reason", "does not")]))).Succeeded);

        Assert.Equal([("reason", "fills in")], await OwnAsync(at));
    }

    [Fact]
    public async Task The_answers_to_what_saves_itself_go_after_a_time_and_those_to_signatures_do_not()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        await KeepAsync(at, ("reason", "fills in"));
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        Assert.Contains(nameof(KeepTyped), await AnsweredAsync(at));

        at.House.Time.Advance(TimeSpan.FromDays(29));
        await at.House.Get<ForgetOldWords>().RunAsync();
        Assert.Contains(nameof(KeepTyped), await AnsweredAsync(at));
        at.House.Time.Advance(TimeSpan.FromDays(2));
        await at.House.Get<ForgetOldWords>().RunAsync();

        string[] left = await AnsweredAsync(at);
        Assert.DoesNotContain(nameof(KeepTyped), left);
        Assert.Contains(nameof(SignPlan), left);
        Assert.Equal([("reason", "fills in")], await OwnAsync(at));
    }

    private static Task<string[]> AnsweredAsync(ExerciseHouse at) =>
        at.House.LookAsync(async records => await records.AppliedCommands.Select(applied => applied.UseCase).ToArrayAsync());

    private static async Task KeepAsync(ExerciseHouse at, params (string Name, string? Text)[] fields)
    {
        Outcome<Saved> kept = await at.House.Get<KeepTyped>().ExecuteAsync(at.House.Vet, InputOf(at, fields));
        Assert.True(kept.Succeeded, string.Join(", ", kept.Problems.Select(problem => problem.Code)));
    }

    private static KeepTypedInput InputOf(ExerciseHouse at, (string Name, string? Text)[] fields) =>
        new(
            Guid.NewGuid(),
            at.Horse,
            TypedForm.Decision,
            fields.ToDictionary(field => field.Name, field => field.Text, StringComparer.Ordinal)
        );

    /// <summary>In the order in which it is put back.</summary>
    private static async Task<(string, string)[]> OwnAsync(ExerciseHouse at) =>
        [
            .. (await at.House.Get<GetTyped>().ExecuteAsync(at.House.Vet, new GetTypedInput(at.Horse, TypedForm.Decision)))
                .Value.Where(form => form.IsOwn)
                .SelectMany(form => form.Fields)
                .Select(field => (field.Key, field.Value)),
        ];
}
