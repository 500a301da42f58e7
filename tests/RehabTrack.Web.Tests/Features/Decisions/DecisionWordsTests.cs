using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Features.Decisions;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Decisions;

public sealed class DecisionWordsTests
{
    private static readonly DateOnly Day = new(2026, 11, 4);

    [Fact]
    public void All_parameters_stand_in_one_sentence()
    {
        Decision decision = new()
        {
            Kind = DecisionKind.Advance,
            PlanVersionId = "p",
            From = Day,
            Place = new PlanPlace(1, 6),
            Limits = new OutingLimits(Walk: 15, Canter: 0),
            ValidUntil = Day.AddDays(30),
            RecheckDate = Day.AddDays(60),
            Floor = new Work
            {
                Outing = new OutingMinutes(10),
                OutingsADay = 1,
                DaysAWeek = 7,
                Modes = WorkModes.InHand,
            },
        };

        string told = DecisionWords.Parameters(decision, HorseInRehab.Plan);

        Assert.StartsWith(
            $"Signed: from {Figures.Date(Day)}, at 2. first trot, day 7 of it, at most walk 15 min, canter 0 min, "
                + $"valid until {Figures.Date(Day.AddDays(30))}, recheck on {Figures.Date(Day.AddDays(60))}, on bad days ",
            told,
            StringComparison.Ordinal
        );
        Assert.EndsWith(".", told, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_not_signed_is_not_told_and_a_pause_ends_on_its_last_day()
    {
        Decision pause = new()
        {
            Kind = DecisionKind.Pause,
            PlanVersionId = "p",
            From = Day,
            ValidUntil = Day.AddDays(9),
        };

        Assert.Equal(
            $"Signed: from {Figures.Date(Day)}, until {Figures.Date(Day.AddDays(9))}.",
            DecisionWords.Parameters(pause, HorseInRehab.Plan)
        );
    }

    [Fact]
    public void Answers_are_told_either_way_and_what_was_not_recorded_is_left_out()
    {
        VisitSigns signs = new()
        {
            Sound = false,
            UnderAntiInflammatory = false,
            HadShockWave = true,
            LastShockWave = Day,
            HadNeurectomy = false,
        };

        Assert.Equal(
            $"Answered: not sound, no medicine that hides lameness, shock wave, last on {Figures.Date(Day)}, no nerve was cut.",
            DecisionWords.Answers(signs)
        );
        Assert.Equal(DecisionPage.AnsweredNothing, DecisionWords.Answers(new VisitSigns { PlanStart = Day }));
    }

    [Theory]
    [InlineData(60, SignGrade.Slight, "Found: flexion test of 60 s slight.")]
    [InlineData(null, SignGrade.None, "Found: flexion test none.")]
    [InlineData(60, SignGrade.NotChecked, null)]
    public void A_flexion_test_is_told_with_its_seconds_when_it_was_answered(int? seconds, SignGrade response, string? told) =>
        Assert.Equal(
            told ?? DecisionPage.RestedNothing,
            DecisionWords.Signs(new Visit { FlexionSeconds = seconds, FlexionResponse = response })
        );
}
