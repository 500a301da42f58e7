using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Web.Components.Conflicts;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Plans;

/// <summary>Two people wrote in one plan: what only one of them changed is taken over, what both changed is asked.</summary>
/// <param name="Differences">Where both differ, in the order of the page. What is typed here stands until theirs is taken.</param>
/// <param name="Kept">What the other person saved, each step at the place it has on the page: the next comparison starts from it.</param>
public sealed record PlanMerge(IReadOnlyList<PlanDifference> Differences, PlanEntry Kept)
{
    /// <summary>Brings what somebody else saved into what is typed here.</summary>
    /// <param name="before">What was typed here when it was last kept; null when nothing was kept yet.</param>
    /// <param name="mine">What is typed here; takes what only they changed.</param>
    /// <param name="theirs">What they saved.</param>
    /// <param name="rules">The practice's rules, whose numbers their sentences name.</param>
    public static PlanMerge Into(PlanEntry? before, PlanEntry mine, PlanEntry theirs, RuleSettings rules)
    {
        ArgumentNullException.ThrowIfNull(mine);
        ArgumentNullException.ThrowIfNull(theirs);
        List<PlanDifference> differences = [];
        PlanEntry start = before ?? Blank(mine);
        mine.Template = mine.Template == start.Template ? theirs.Template : mine.Template;
        Merge(PlanFields.OfPlan, null, start, mine, theirs, rules, differences);

        Dictionary<Guid, StepEntry> here = mine.Steps.ToDictionary(step => step.Key);
        // Where nothing was kept before, the steps that are typed here are all there is to compare with.
        Dictionary<StepEntry, StepEntry> pairs = StepPairs.Between((before ?? mine).Steps, theirs.Steps);
        Dictionary<StepEntry, StepEntry> placed = [];
        HashSet<StepEntry> gone = [];
        foreach (StepEntry was in start.Steps)
        {
            StepEntry? now = here.GetValueOrDefault(was.Key);
            StepEntry? saved = pairs.GetValueOrDefault(before is null ? now! : was);
            if (now is not null && saved is not null)
            {
                Merge(PlanFields.OfStep, now, was, now, saved, rules, differences);
                placed.Add(saved, now);
            }
            else if (now is not null && before is not null && StepPairs.AreEqual(was, now))
            {
                gone.Add(now);
            }
            else if (saved is not null && StepPairs.AreEqual(was, saved))
            {
                placed.Add(saved, saved);
                gone.Add(saved);
            }
        }

        Place(start, mine, theirs, placed, gone);
        mine.Read();
        PlanEntry kept = theirs.Copy();
        kept.Place(theirs.Steps.Select(step => step.Copy(placed[step].Key)));
        kept.Read();
        return new PlanMerge(differences, kept);
    }

    /// <summary>Puts the steps in order: as here where they were moved here, else as theirs; what they added stands behind what it stood behind.</summary>
    private static void Place(
        PlanEntry start,
        PlanEntry mine,
        PlanEntry theirs,
        Dictionary<StepEntry, StepEntry> placed,
        HashSet<StepEntry> gone
    )
    {
        List<StepEntry> steps = [.. mine.Steps.Where(step => !gone.Contains(step))];
        Guid[] before = [.. start.Steps.Select(step => step.Key)];
        StepEntry[] common = [.. steps.Where(placed.ContainsValue)];
        if (common.Select(step => Array.IndexOf(before, step.Key)).Where(at => at >= 0) is var order && order.SequenceEqual(order.Order()))
        {
            Queue<StepEntry> asTheirs = new(theirs.Steps.Where(placed.ContainsKey).Select(step => placed[step]).Where(common.Contains));
            steps = [.. steps.Select(step => common.Contains(step) ? asTheirs.Dequeue() : step)];
        }

        int at = 0;
        foreach (StepEntry step in theirs.Steps)
        {
            if (!placed.TryGetValue(step, out StepEntry? now))
            {
                // One that was added here, too, with the same in it, is one step.
                now = steps.Find(one => !placed.ContainsValue(one) && !before.Contains(one.Key) && StepPairs.AreEqual(one, step));
                placed.Add(step, now ?? step);
                if (now is null)
                {
                    steps.Insert(at, step);
                }
            }

            int found = steps.IndexOf(placed[step]);
            at = found < 0 ? at : found + 1;
        }

        mine.Place(steps);
    }

    private static PlanEntry Blank(PlanEntry mine)
    {
        PlanEntry blank = PlanEntry.Of(PlanEntry.Empty);
        blank.Place(mine.Steps.Select(step => new StepEntry().Copy(step.Key)));
        return blank;
    }

    private static void Merge<T>(
        IReadOnlyList<PlanField<T>> fields,
        StepEntry? step,
        T before,
        T mine,
        T theirs,
        RuleSettings rules,
        List<PlanDifference> differences
    )
    {
        foreach (PlanField<T> field in fields)
        {
            string here = field.Text(mine);
            if (field.Parts.Count > 0 && here.Length > 0 && field.Text(before).Length > 0 && field.Text(theirs).Length > 0)
            {
                PlanField<T>[] parts =
                [
                    .. field.Parts.Select(part =>
                        part with
                        {
                            Name = string.Format(TextCulture.Default, FormTexts.ConflictCell, field.Name, part.Name),
                        }
                    ),
                ];
                Merge(parts, step, before, mine, theirs, rules, differences);
                continue;
            }

            string chosen = ThreeWay.Choose(
                field.Text(before),
                here,
                field.Text(theirs),
                (_, _) =>
                    differences.Add(
                        new PlanDifference(
                            step,
                            field.Name,
                            () => field.Words(mine, rules),
                            field.Words(theirs, rules),
                            () => field.Copy(mine, theirs)
                        )
                    )
            );
            if (chosen != here)
            {
                field.Copy(mine, theirs);
            }
        }
    }
}
