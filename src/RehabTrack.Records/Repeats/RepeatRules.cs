using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Repeats;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Repeats;

/// <summary>What a repeat tracing must keep to: a name, a size with a cv of its own, a value within the limits of examinations.</summary>
public static class RepeatRules
{
    private static readonly ReferenceTable Limits = ReferenceTable.Load("limits");
    private static readonly int LongestName = (int)Limits["longestName"];
    private static readonly int Most = (int)ReferenceTable.Load("repeats")["mostRows"];

    /// <summary>All that is wrong with a tracing.</summary>
    /// <param name="tracing">The tracing.</param>
    /// <param name="field">What names it in a problem.</param>
    public static IReadOnlyList<Problem> Check(RepeatTracing tracing, string field)
    {
        ArgumentNullException.ThrowIfNull(tracing);
        List<Problem> problems = [];
        if (string.IsNullOrWhiteSpace(tracing.Subject))
        {
            problems.Add(new Problem(field, "repeat-without-subject"));
        }

        foreach (string text in (string[])[tracing.Subject ?? "", tracing.Measurer ?? ""])
        {
            if (Checks.Unkeepable(field, text.Trim(), LongestName) is { } unkeepable)
            {
                problems.Add(unkeepable);
            }
        }

        if (!ErrorCv.Sizes.Contains(tracing.Size))
        {
            problems.Add(new Problem(field, "repeat-of-share"));
            return problems;
        }

        double largest = LargestOf(tracing.Size);
        bool zeroAllowed = tracing.Size == MeasuredSize.LesionArea;
        if (!(tracing.Value >= 0 && tracing.Value <= largest) || (tracing.Value == 0 && !zeroAllowed))
        {
            problems.Add(new Problem(field, "repeat-out-of-range", RecordText.Of(tracing.Value), RecordText.Of(largest)));
        }

        return problems;
    }

    /// <summary>Whether more tracings than a practice keeps would count; null when not.</summary>
    internal static async Task<Problem?> TooManyAsync(RecordsContext records, int more, CancellationToken cancellation)
    {
        int all = more + await records.RepeatTracings.CountAsync(record => record.ArchivedAt == null, cancellation);
        return all > Most ? new Problem("tracings", "repeats-too-many", RecordText.Of(all), RecordText.Of(Most)) : null;
    }

    private static double LargestOf(MeasuredSize size) =>
        size switch
        {
            MeasuredSize.Thickness => Limits["largestThicknessCm"],
            MeasuredSize.Width => Limits["largestWidthCm"],
            MeasuredSize.LigamentArea or MeasuredSize.LesionArea or MeasuredSize.LesionPercent => Limits["largestAreaCm2"],
        };
}
