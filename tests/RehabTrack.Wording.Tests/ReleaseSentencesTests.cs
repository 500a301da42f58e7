using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Suggestions;

namespace RehabTrack.Wording.Tests;

public sealed class ReleaseSentencesTests
{
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

    [Theory]
    [MemberData(nameof(All))]
    public void No_sentence_names_minutes_because_only_the_permit_of_the_day_knows_them(DecisionKind kind, Verdict verdict) =>
        Assert.All(
            [.. ReleaseSentences.ForOwner(Facts(kind, verdict)), .. ReleaseSentences.ForTrainer(Facts(kind, verdict))],
            sentence =>
            {
                Assert.DoesNotContain(" min", sentence, StringComparison.OrdinalIgnoreCase);
                Assert.DoesNotContain("permitted", sentence, StringComparison.OrdinalIgnoreCase);
            }
        );

    [Theory]
    [InlineData(DecisionKind.Advance, true)]
    [InlineData(DecisionKind.Hold, true)]
    [InlineData(DecisionKind.StepBack, true)]
    [InlineData(DecisionKind.Stop, false)]
    [InlineData(DecisionKind.Pause, false)]
    [InlineData(DecisionKind.Close, false)]
    public void Where_work_goes_on_both_are_sent_to_the_permit_of_the_day(DecisionKind kind, bool told)
    {
        ReleaseFacts facts = Facts(kind, Verdict.Stalled);

        Assert.Equal(
            told,
            ReleaseSentences
                .ForOwner(facts)
                .Contains("What Quillon may do on a day stands on this page for that day, and nothing else counts.")
        );
        Assert.Equal(told, ReleaseSentences.ForTrainer(facts).Contains("Do what the sheet of the day says, and no more."));
    }

    [Fact]
    public void The_recheck_is_told_to_both()
    {
        ReleaseFacts facts = Facts(DecisionKind.Hold, Verdict.Stalled);
        string told = $"We look at the horse again on {Figures.Date(facts.Recheck)}.";
        Assert.Contains(told, ReleaseSentences.ForOwner(facts));
        Assert.Contains(told, ReleaseSentences.ForTrainer(facts));
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
            Injuries = [("left hind, suspensory ligament", verdict)],
        };
}
