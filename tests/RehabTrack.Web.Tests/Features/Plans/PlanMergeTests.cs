using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Web.Features.Plans;

namespace RehabTrack.Web.Tests.Features.Plans;

/// <summary>Two people wrote in one plan: nothing that either typed goes without being asked.</summary>
public sealed class PlanMergeTests
{
    private static readonly PlanVersion Start = Plan(Step("walk", 20), Step("trot", 5), Step("canter", 2));

    [Fact]
    public void Fields_that_only_one_changed_come_together()
    {
        PlanEntry before = PlanEntry.Of(Start);
        PlanEntry mine = before.Copy();
        mine.Steps[1].Gaits[Gait.Walk].FirstWeek = "6";
        mine.CapDay = "4o";
        PlanEntry theirs = PlanEntry.Of(
            Start with
            {
                Title = "Theirs",
                Steps = [Start.Steps[0], Start.Steps[1] with { Note = "slowly" }, Start.Steps[2]],
            }
        );

        PlanMerge merge = PlanMerge.Into(before, mine, theirs, new RuleSettings());

        Assert.Empty(merge.Differences);
        Assert.Equal(
            ("Theirs", "4o", "6", "slowly"),
            (mine.Title, mine.CapDay, mine.Steps[1].Gaits[Gait.Walk].FirstWeek, mine.Steps[1].Note)
        );
    }

    [Fact]
    public void What_both_changed_stays_as_typed_here_until_theirs_is_taken()
    {
        PlanEntry before = PlanEntry.Of(Start);
        PlanEntry mine = before.Copy();
        mine.Steps[1].Name = "my trot";
        PlanEntry theirs = PlanEntry.Of(
            Start with
            {
                Steps = [Start.Steps[0], Start.Steps[1] with { Name = "their trot" }, Start.Steps[2]],
            }
        );

        PlanDifference difference = Assert.Single(PlanMerge.Into(before, mine, theirs, new RuleSettings()).Differences);

        Assert.Equal((mine.Steps[1], "my trot", "their trot"), (difference.Step, difference.Mine(), difference.Theirs));
        difference.Take();
        Assert.Equal(["walk", "their trot", "canter"], Names(mine));
    }

    [Fact]
    public void Steps_that_either_added_stand_where_they_were_put_and_one_that_both_added_is_one()
    {
        PlanEntry before = PlanEntry.Of(Start);
        PlanEntry mine = before.Copy();
        StepEntry last = mine.Add();
        last.Name = "hacking";
        StepEntry both = mine.Add();
        both.Name = "school";
        PlanEntry theirs = PlanEntry.Of(
            Start with
            {
                Steps =
                [
                    Start.Steps[0],
                    Step("long walk", 40),
                    Start.Steps[1],
                    Start.Steps[2],
                    new PlanStep { Name = "school", ShortestDays = 0 },
                ],
            }
        );

        PlanMerge merge = PlanMerge.Into(before, mine, theirs, new RuleSettings());

        Assert.Empty(merge.Differences);
        Assert.Equal(["walk", "long walk", "trot", "canter", "hacking", "school"], Names(mine));
    }

    [Fact]
    public void A_step_that_one_took_out_goes_unless_the_other_changed_it()
    {
        PlanEntry before = PlanEntry.Of(Start);
        PlanEntry mine = before.Copy();
        mine.Remove(mine.Steps[0]);
        mine.Remove(mine.Steps[0]);
        mine.Steps[0].Note = "mine";
        PlanEntry theirs = PlanEntry.Of(Start with { Steps = [Start.Steps[0], Start.Steps[1] with { Note = "theirs" }] });

        PlanMerge.Into(before, mine, theirs, new RuleSettings());

        Assert.Equal(["trot", "canter"], Names(mine).Order(StringComparer.Ordinal).Reverse());
        Assert.Equal(["theirs", "mine"], mine.Steps.OrderByDescending(step => step.Name, StringComparer.Ordinal).Select(step => step.Note));
    }

    [Fact]
    public void Steps_that_they_moved_are_moved_here_and_those_moved_here_stay()
    {
        PlanVersion moved = Start with { Steps = [Start.Steps[1], Start.Steps[0], Start.Steps[2]] };
        PlanEntry before = PlanEntry.Of(Start);
        PlanEntry still = before.Copy();
        PlanMerge.Into(before, still, PlanEntry.Of(moved), new RuleSettings());
        PlanEntry mine = before.Copy();
        mine.Move(mine.Steps[2], -1);
        PlanMerge.Into(before, mine, PlanEntry.Of(moved), new RuleSettings());

        Assert.Equal(["trot", "walk", "canter"], Names(still));
        Assert.Equal(["walk", "canter", "trot"], Names(mine));
    }

    [Fact]
    public void A_recheck_that_one_took_away_and_the_other_wrote_about_is_asked_as_a_whole()
    {
        PlanVersion gated = Plan(Step("walk", 20) with { Gate = new Gate("sound", []) }, Step("trot", 5));
        PlanEntry before = PlanEntry.Of(gated);
        PlanEntry mine = before.Copy();
        mine.Steps[0].Criteria = "sound on a circle";
        PlanEntry theirs = PlanEntry.Of(gated with { Steps = [gated.Steps[0] with { Gate = null }, gated.Steps[1]] });

        PlanDifference difference = Assert.Single(PlanMerge.Into(before, mine, theirs, new RuleSettings()).Differences);

        Assert.Contains("sound on a circle", difference.Mine(), StringComparison.Ordinal);
        Assert.Equal("", difference.Theirs);
        Assert.True(mine.Steps[0].HasGate);
        difference.Take();
        Assert.False(mine.Steps[0].HasGate);
    }

    [Fact]
    public void Work_for_bad_days_is_compared_field_by_field_where_both_signed_some()
    {
        PlanVersion floored = Start with
        {
            Floor = new Work
            {
                Outing = new OutingMinutes(10),
                OutingsADay = 1,
                DaysAWeek = 7,
            },
        };
        PlanEntry before = PlanEntry.Of(floored);
        PlanEntry mine = before.Copy();
        mine.Floor[Gait.Walk] = "15";
        PlanEntry theirs = PlanEntry.Of(floored with { Floor = floored.Floor with { DaysAWeek = 5 } });

        Assert.Empty(PlanMerge.Into(before, mine, theirs, new RuleSettings()).Differences);
        Assert.Equal((15, 5), (mine.Plan.Floor!.Outing.Walk, mine.Plan.Floor.DaysAWeek));
    }

    [Fact]
    public void Two_first_drafts_are_compared_step_by_step()
    {
        PlanEntry mine = PlanEntry.Of(Plan(Step("walk", 20), Step("trot", 5)));
        PlanEntry theirs = PlanEntry.Of(Plan(Step("walk", 30)));

        PlanMerge merge = PlanMerge.Into(null, mine, theirs, new RuleSettings());

        PlanDifference difference = Assert.Single(merge.Differences);
        Assert.Equal(("20", "30"), (difference.Mine(), difference.Theirs));
        Assert.Equal(["walk", "trot"], Names(mine));
    }

    [Fact]
    public void The_next_comparison_starts_from_what_they_saved()
    {
        PlanEntry before = PlanEntry.Of(Start);
        PlanEntry mine = before.Copy();
        mine.Title = "Mine";
        PlanMerge first = PlanMerge.Into(
            before,
            mine,
            PlanEntry.Of(Start with { Steps = [Step("lead", 5), .. Start.Steps] }),
            new RuleSettings()
        );

        PlanMerge second = PlanMerge.Into(
            first.Kept,
            mine,
            PlanEntry.Of(Start with { Steps = [Step("lead", 8), .. Start.Steps] }),
            new RuleSettings()
        );

        Assert.Empty(second.Differences);
        Assert.Equal(["lead", "walk", "trot", "canter"], Names(mine));
        Assert.Equal(("Mine", "8"), (mine.Title, mine.Steps[0].Gaits[Gait.Walk].FirstWeek));
    }

    private static IEnumerable<string?> Names(PlanEntry plan) => plan.Steps.Select(step => step.Name);

    private static PlanVersion Plan(params PlanStep[] steps) =>
        new()
        {
            Id = "",
            Number = 0,
            Title = "Start",
            Steps = steps,
        };

    private static PlanStep Step(string name, int walk) =>
        new()
        {
            Name = name,
            Walk = new GaitRule(walk),
            ShortestDays = 28,
        };
}
