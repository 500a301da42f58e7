using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.Bookings;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Exercise;

/// <summary>Anyone beside the horse may lower its work; nobody raises it so.</summary>
public sealed class LowerWorkTests
{
    private static readonly Work Ten = PlanRows.At(ExerciseHouse.Plan, PlanPlace.Start) with { Outing = new OutingMinutes(10) };

    private static async Task<ExerciseHouse> SignedAsync()
    {
        ExerciseHouse house = await ExerciseHouse.BuildAsync();
        await house.SignAsync(ExerciseHouse.Plan);
        return house;
    }

    private static Task<Outcome<Saved>> LowerAsync(
        ExerciseHouse house,
        Work atMost,
        int? days = 2,
        string? words = "lost a shoe",
        Actor? who = null,
        string? told = null
    ) =>
        house
            .House.Get<LowerWork>()
            .ExecuteAsync(
                who ?? house.Trainer,
                new LowerWorkInput(
                    Guid.NewGuid(),
                    house.Horse,
                    atMost,
                    ExerciseHouse.Today,
                    days is { } given ? ExerciseHouse.Today.AddDays(given) : null,
                    words,
                    told
                )
            );

    [Fact]
    public async Task What_a_trainer_lowers_holds_on_its_days_and_is_told_with_who_and_why()
    {
        await using ExerciseHouse house = await SignedAsync();

        Assert.True((await LowerAsync(house, Ten)).Succeeded);

        ExerciseView view = await house.ViewAsync();
        Assert.Equal((10, PermitState.Held), (view.Today.Work.Outing.Walk, view.Today.State));
        Assert.Equal(("lost a shoe", "Oona Pell"), (view.Lines[^1].Words!.Words, view.Lines[^1].EnteredBy));
        house.House.Time.Advance(TimeSpan.FromDays(3));
        Assert.Equal(20, (await house.ViewAsync()).Today.Work.Outing.Walk);
    }

    [Fact]
    public async Task An_assistant_lowers_for_somebody_on_the_telephone()
    {
        await using ExerciseHouse house = await SignedAsync();
        Actor assistant = await house.House.PersonAsync("Sorrel Dunn", Role.Assistant);

        await LowerAsync(house, Ten, who: assistant, told: "Oona Pell");

        ExerciseLine line = (await house.ViewAsync()).Lines[^1];
        Assert.Equal(("Sorrel Dunn", "Oona Pell"), (line.EnteredBy, line.OnBehalfOf));
    }

    [Fact]
    public async Task What_is_wrong_is_told_at_once_and_lowers_nothing()
    {
        await using ExerciseHouse house = await SignedAsync();

        Assert.Equal("lowers-nothing", (await LowerAsync(house, PlanRows.At(ExerciseHouse.Plan, PlanPlace.Start))).Codes());
        Assert.Equal(
            "until-before-from,work-out-of-range,field-empty",
            (await LowerAsync(house, Ten with { DaysAWeek = 8 }, -1, " ")).Codes()
        );
        Assert.Equal(20, (await house.ViewAsync()).Today.Work.Outing.Walk);
    }

    [Fact]
    public async Task Without_signed_work_there_is_nothing_to_lower()
    {
        await using ExerciseHouse house = await ExerciseHouse.BuildAsync();

        Assert.Equal("lowers-nothing", (await LowerAsync(house, Ten)).Codes());
    }

    [Fact]
    public async Task A_horse_of_another_yard_is_not_found()
    {
        await using ExerciseHouse house = await SignedAsync();

        Assert.Equal("not-found", (await LowerAsync(house, Ten, who: await house.House.PersonAsync("Wren Ashby", Role.Trainer))).Codes());
    }
}
