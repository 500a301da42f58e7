using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Suggestions;

namespace RehabTrack.Wording.Tests;

public sealed class ReleaseSentencesTests
{
    private static readonly Work Walk = new()
    {
        Outing = new OutingMinutes(20, 5),
        OutingsADay = 2,
        DaysAWeek = 7,
        Modes = WorkModes.InHand,
        Surfaces = Surfaces.FirmEven,
    };

    public static TheoryData<DecisionKind, Verdict> All
    {
        get
        {
            TheoryData<DecisionKind, Verdict> all = [];
            foreach (DecisionKind kind in Enum.GetValues<DecisionKind>())
            {
                foreach (Verdict verdict in Enum.GetValues<Verdict>())
                {
                    all.Add(kind, verdict);
                }
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void No_sentence_tells_a_suggestion_a_projection_or_a_figure_of_the_trend(DecisionKind kind, Verdict verdict)
    {
        ReleaseFacts facts = Facts(kind, verdict);
        string[] moves = [.. Enum.GetValues<SuggestedMove>().Select(move => SuggestionSentences.Of(move, AskedStep.Trot))];

        Assert.All(
            [.. ReleaseSentences.ForOwner(facts), .. ReleaseSentences.ForTrainer(facts)],
            sentence =>
            {
                Assert.DoesNotContain("suggest", sentence, StringComparison.OrdinalIgnoreCase);
                Assert.DoesNotContain("rules", sentence, StringComparison.OrdinalIgnoreCase);
                Assert.DoesNotContain("%", sentence, StringComparison.Ordinal);
                Assert.DoesNotContain("likely", sentence, StringComparison.OrdinalIgnoreCase);
                Assert.DoesNotContain("expected", sentence, StringComparison.OrdinalIgnoreCase);
                Assert.DoesNotContain(sentence, moves);
                Assert.EndsWith(".", sentence, StringComparison.Ordinal);
                Assert.DoesNotContain("{", sentence, StringComparison.Ordinal);
            }
        );
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Whatever_speaks_of_healing_ends_with_no_more_work(DecisionKind kind, Verdict verdict) =>
        Assert.All(
            ReleaseSentences.ForOwner(Facts(kind, verdict)).Where(text => text.Contains("heal", StringComparison.OrdinalIgnoreCase)),
            text => Assert.EndsWith("This does not permit more work.", text, StringComparison.Ordinal)
        );

    [Theory]
    [InlineData(" It heals well. ", "It heals well. This does not permit more work.")]
    [InlineData("Healing. This does not permit more work.", "Healing. This does not permit more work.")]
    [InlineData("We look again in May.", "We look again in May.")]
    public void A_sentence_of_ones_own_about_healing_gets_the_same_ending(string typed, string read) =>
        Assert.Equal(read, ReleaseSentences.Finished(typed));

    [Fact]
    public void Minutes_and_recheck_are_told_to_both_and_how_and_where_to_the_trainer()
    {
        ReleaseFacts facts = Facts(DecisionKind.Hold, Verdict.Stalled);

        Assert.Contains("Permitted now: walk 20 min, trot 5 min, twice a day, every day.", ReleaseSentences.ForOwner(facts));
        Assert.Contains(
            "Permitted now: walk 20 min, trot 5 min, twice a day, every day; in hand; straight lines only; firm, even ground.",
            ReleaseSentences.ForTrainer(facts)
        );
        Assert.Contains($"We look at the horse again on {Figures.Date(facts.Recheck)}.", ReleaseSentences.ForTrainer(facts));
    }

    [Fact]
    public void Where_no_outing_is_permitted_none_is_named()
    {
        ReleaseFacts facts = Facts(DecisionKind.Stop, Verdict.Worsening) with { Work = Work.None };
        Assert.DoesNotContain(ReleaseSentences.ForTrainer(facts), text => text.Contains("Permitted", StringComparison.Ordinal));
    }

    [Fact]
    public void A_pause_with_an_end_names_it() =>
        Assert.Equal(
            $"Quillon rests from {Figures.Date(new DateOnly(2026, 9, 9))} to {Figures.Date(new DateOnly(2026, 9, 20))}.",
            ReleaseSentences.ForOwner(Facts(DecisionKind.Pause, Verdict.Healing) with { Until = new DateOnly(2026, 9, 20) })[0]
        );

    private static ReleaseFacts Facts(DecisionKind kind, Verdict verdict) =>
        new()
        {
            Horse = "Quillon",
            Kind = kind,
            From = new DateOnly(2026, 9, 9),
            Recheck = new DateOnly(2026, 11, 7),
            Work = Walk,
            Injuries = [("left hind, suspensory ligament", verdict)],
        };
}
