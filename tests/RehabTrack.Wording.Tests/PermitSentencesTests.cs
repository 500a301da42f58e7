using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;

namespace RehabTrack.Wording.Tests;

public sealed class PermitSentencesTests
{
    private static readonly Work TrotWork = new()
    {
        Outing = new OutingMinutes(30, 10),
        OutingsADay = 2,
        DaysAWeek = 6,
        Modes = WorkModes.InHand | WorkModes.Ridden,
        Circles = Circles.Large,
        Surfaces = Surfaces.FirmEven,
        Turnout = Turnout.SmallPaddock,
    };

    private static Permit PermitOf(PermitState state, Work work) =>
        new()
        {
            Date = new DateOnly(2026, 11, 26),
            State = state,
            Work = work,
            BeforeWeek = work,
            SignedWork = work,
            Reasons = [new PermitReason(PermitReasonCode.NoPlan)],
            VoidAfter = new DateOnly(2026, 11, 26),
        };

    [Fact]
    public void Work_reads_as_people_say_it()
    {
        Assert.Equal("Walk 30 min, trot 10 min", PermitSentences.Headline(PermitOf(PermitState.Live, TrotWork)));
        Assert.Equal("twice a day, 6 days a week", PermitSentences.HowOften(TrotWork));
        Assert.Equal("in hand or ridden; large circles; firm, even ground", PermitSentences.HowAndWhere(TrotWork));
        Assert.Equal("Otherwise: paddock too small to canter in.", PermitSentences.Standing(TrotWork));
        Assert.Equal("once a day, every day", PermitSentences.HowOften(TrotWork with { OutingsADay = 1, DaysAWeek = 7 }));
    }

    [Theory]
    [InlineData(PermitState.NothingSigned, "No work is signed.")]
    [InlineData(PermitState.Closed, "The plan has ended. No work is signed.")]
    [InlineData(PermitState.Stopped, "Stopped: no work.")]
    [InlineData(PermitState.Floor, "No work for now.")]
    public void Where_nothing_is_permitted_it_is_said_so(PermitState state, string expected)
    {
        Assert.Equal(expected, PermitSentences.Headline(PermitOf(state, Work.None)));
        Assert.Null(PermitSentences.HowOften(Work.None));
        Assert.Null(PermitSentences.HowAndWhere(Work.None));
    }

    [Fact]
    public void Every_reason_is_a_sentence_without_an_open_place()
    {
        foreach (PermitReasonCode code in Enum.GetValues<PermitReasonCode>())
        {
            foreach (DateOnly? until in new DateOnly?[] { null, new(2026, 12, 24) })
            {
                string said = PermitSentences.Of(
                    new PermitReason(code)
                    {
                        Since = new DateOnly(2026, 11, 26),
                        Until = until,
                        Days = 14,
                        Step = "Walk in hand",
                        Week = 3,
                        Done = 5,
                        Most = 5,
                    }
                );
                Assert.EndsWith(".", said, StringComparison.Ordinal);
                Assert.DoesNotContain("  ", said, StringComparison.Ordinal);
                Assert.DoesNotContain("{", said, StringComparison.Ordinal);
            }
        }

        Assert.Equal(
            "5 of 5 days of this week are done: today the horse rests.",
            PermitSentences.Of(new PermitReason(PermitReasonCode.RestDay) { Done = 5, Most = 5 })
        );
        Assert.Contains(
            "24",
            PermitSentences.Of(new PermitReason(PermitReasonCode.PausedByPerson) { Until = new DateOnly(2026, 12, 24) }),
            StringComparison.Ordinal
        );
    }
}
