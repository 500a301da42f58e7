namespace RehabTrack.Web.Features.Plans;

/// <summary>Which step of one plan is which of another that grew from it: steps carry no names of their own that nobody may change.</summary>
internal static class StepPairs
{
    /// <summary>Whether all fields of two steps say the same.</summary>
    public static bool AreEqual(StepEntry first, StepEntry second) =>
        PlanFields.OfStep.All(field => field.Text(first) == field.Text(second));

    /// <summary>
    /// Pairs the steps of two plans: those that are alike in their order, then those that stand between the same neighbours, then those that
    /// were moved. What has no pair was added or taken out.
    /// </summary>
    public static Dictionary<StepEntry, StepEntry> Between(IReadOnlyList<StepEntry> first, IReadOnlyList<StepEntry> second)
    {
        Dictionary<StepEntry, StepEntry> pairs = [];
        (int, int)[] inOrder = [.. InOrder(first, second)];
        foreach ((int one, int other) in inOrder)
        {
            pairs.Add(first[one], second[other]);
        }

        // What was moved is alike and stands elsewhere.
        foreach (StepEntry step in first.Where(step => !pairs.ContainsKey(step)))
        {
            if (second.FirstOrDefault(other => !pairs.ContainsValue(other) && AreAlike(step, other)) is { } moved)
            {
                pairs.Add(step, moved);
            }
        }

        (int One, int Other) last = (-1, -1);
        foreach ((int one, int other) in inOrder.Append((first.Count, second.Count)))
        {
            IEnumerable<StepEntry> left = first.Take(one).Skip(last.One + 1).Where(step => !pairs.ContainsKey(step));
            IEnumerable<StepEntry> right = second.Take(other).Skip(last.Other + 1).Where(step => !pairs.ContainsValue(step));
            foreach ((StepEntry was, StepEntry now) in left.Zip(right).ToArray())
            {
                pairs.Add(was, now);
            }

            last = (one, other);
        }

        return pairs;
    }

    private static bool AreAlike(StepEntry first, StepEntry second) =>
        AreEqual(first, second) || (!string.IsNullOrWhiteSpace(first.Name) && first.Name.Trim() == second.Name?.Trim());

    /// <summary>The longest run of alike steps that stand in both plans in the same order.</summary>
    private static IEnumerable<(int First, int Second)> InOrder(IReadOnlyList<StepEntry> first, IReadOnlyList<StepEntry> second)
    {
        int[,] longest = new int[first.Count + 1, second.Count + 1];
        for (int one = first.Count - 1; one >= 0; one--)
        {
            for (int other = second.Count - 1; other >= 0; other--)
            {
                longest[one, other] = AreAlike(first[one], second[other])
                    ? longest[one + 1, other + 1] + 1
                    : Math.Max(longest[one + 1, other], longest[one, other + 1]);
            }
        }

        for (int one = 0, other = 0; one < first.Count && other < second.Count; )
        {
            if (AreAlike(first[one], second[other]))
            {
                yield return (one++, other++);
            }
            else if (longest[one + 1, other] >= longest[one, other + 1])
            {
                one++;
            }
            else
            {
                other++;
            }
        }
    }
}
