using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Watch;

namespace RehabTrack.Wording.Tests;

public sealed class StandingSentencesTests
{
    private static readonly DateOnly Day = new(2026, 9, 8);

    public static TheoryData<StandingKind> Kinds => [.. Enum.GetValues<StandingKind>().Except([StandingKind.OfCase])];

    private static StandingFinding Example(StandingKind kind) =>
        new()
        {
            Kind = kind,
            Severity = FindingSeverity.Amber,
            Since = Day,
            Next = StandingStep.Decide,
            Days = 9,
            Minutes = 34,
            Count = 2,
            Until = Day.AddDays(14),
            Over = [OverKind.Mode, OverKind.Circles],
            Step = "walk",
            Week = 3,
        };

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_kind_says_since_when_and_what_to_do_next(StandingKind kind)
    {
        foreach (FindingSeverity severity in Enum.GetValues<FindingSeverity>())
        {
            foreach (int number in new[] { 0, 1, 2 })
            {
                StandingFinding finding = Example(kind) with { Severity = severity, Days = number, Minutes = number, Count = number };
                string sentence = StandingSentences.Of(finding);
                Assert.EndsWith(".", sentence, StringComparison.Ordinal);
                Assert.DoesNotContain("{", sentence, StringComparison.Ordinal);
                Assert.Contains(Figures.Date(Day), sentence, StringComparison.Ordinal);
                Assert.Matches("[.;] \\p{L}", sentence);
            }
        }
    }

    [Fact]
    public void No_two_kinds_share_a_title_or_a_sentence()
    {
        StandingKind[] kinds = [.. Enum.GetValues<StandingKind>().Except([StandingKind.OfCase])];
        Assert.Equal(kinds.Length, kinds.Select(kind => StandingSentences.Title(kind)).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(kinds.Length, kinds.Select(kind => StandingSentences.Of(Example(kind))).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Every_next_step_has_a_word_of_its_own()
    {
        StandingStep[] steps = Enum.GetValues<StandingStep>();
        Assert.Equal(steps.Length, steps.Select(step => StandingSentences.Of(step)).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Too_many_minutes_are_told_in_minutes_and_other_ways_by_their_names()
    {
        Assert.Contains("34 min", StandingSentences.Of(Example(StandingKind.OverExercise)), StringComparison.Ordinal);
        Assert.Contains(
            "way of working, circles",
            StandingSentences.Of(Example(StandingKind.OverExercise) with { Minutes = 0 }),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(1, "A concern of")]
    [InlineData(2, "2 concerns wait")]
    public void A_concern_about_a_horse_without_a_plan_does_not_speak_of_a_floor(int count, string begin)
    {
        string sentence = StandingSentences.Of(Example(StandingKind.ConcernOpen) with { Count = count, Next = StandingStep.CallYard });

        Assert.StartsWith(begin, sentence, StringComparison.Ordinal);
        Assert.Contains("no work is signed", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("floor", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void No_progress_names_the_step_and_the_week_of_the_plan()
    {
        Finding said = new()
        {
            Kind = FindingKind.NoProgress,
            Severity = FindingSeverity.Amber,
            Date = Day,
        };
        StandingFinding finding = Example(StandingKind.OfCase) with { OfCase = said };

        Assert.StartsWith(FindingSentences.Of(said), StandingSentences.Of(finding), StringComparison.Ordinal);
        Assert.EndsWith("“walk” of its plan, week 3 of the time that counted.", StandingSentences.Of(finding), StringComparison.Ordinal);
        Assert.Equal(FindingSentences.Of(said), StandingSentences.Of(finding with { Step = null }));
        Assert.Equal(Names.Of(FindingKind.NoProgress), StandingSentences.Title(finding));
    }

    [Fact]
    public void Since_when_is_told_where_the_sentence_does_not_say_it()
    {
        StandingFinding finding = Example(StandingKind.OfCase) with
        {
            OfCase = new() { Kind = FindingKind.NoProgress, Severity = FindingSeverity.Amber },
        };

        Assert.Contains(Figures.Days(9), StandingSentences.Since(finding, Day.AddDays(9)), StringComparison.Ordinal);
        Assert.DoesNotContain(Figures.Date(Day), StandingSentences.Since(finding, Day.AddDays(9)), StringComparison.Ordinal);
        StandingFinding level = finding with
        {
            OfCase = new() { Kind = FindingKind.NewlyAbnormalLevel, Severity = FindingSeverity.Red },
        };
        Assert.Contains(Figures.Date(Day), StandingSentences.Since(level, Day.AddDays(9)), StringComparison.Ordinal);
        Assert.Equal(WatchTexts.SinceToday, StandingSentences.Since(finding, Day));
        Assert.Null(StandingSentences.Since(Example(StandingKind.NoLog), Day.AddDays(9)));
    }
}
