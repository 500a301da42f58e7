using System.Diagnostics;

namespace RehabTrack.Benchmarks.Measuring;

/// <summary>How many times the baseline's time something takes.</summary>
/// <param name="What">What was measured.</param>
/// <param name="Against">The baseline.</param>
/// <param name="Median">The median over the rounds.</param>
/// <param name="Lowest">The lowest round.</param>
/// <param name="Highest">The highest round.</param>
public sealed record Ratio(string What, string Against, double Median, double Lowest, double Highest)
{
    /// <summary>What is worth knowing beside the ratio; null for nothing.</summary>
    public string? Note { get; init; }

    /// <summary>
    /// Measures both sides by turns, so that whatever else the machine does meets both alike. Each side runs once unmeasured, unless it is
    /// said that a round begins cold anyway.
    /// </summary>
    /// <param name="what">What is measured.</param>
    /// <param name="against">The baseline.</param>
    /// <param name="rounds">How often each side is measured.</param>
    /// <param name="subject">One unit of the subject's work.</param>
    /// <param name="subjectTimes">How many units a round holds.</param>
    /// <param name="baseline">One unit of the baseline's work.</param>
    /// <param name="baselineTimes">How many units a round holds.</param>
    /// <param name="isCold">Whether a round begins cold anyway.</param>
    public static async Task<Ratio> MeasureAsync(
        string what,
        string against,
        int rounds,
        Func<Task> subject,
        int subjectTimes,
        Func<Task> baseline,
        int baselineTimes,
        bool isCold = false
    )
    {
        if (!isCold)
        {
            await SecondsAsync(subject, subjectTimes);
            await SecondsAsync(baseline, baselineTimes);
        }

        List<double> ratios = [];
        for (int round = 0; round < rounds; round++)
        {
            double one = await SecondsAsync(subject, subjectTimes);
            ratios.Add(one / await SecondsAsync(baseline, baselineTimes));
        }

        ratios.Sort();
        return new(what, against, ratios[ratios.Count / 2], ratios[0], ratios[^1]);
    }

    /// <summary>The same for work that does not wait.</summary>
    public static Task<Ratio> MeasureAsync(
        string what,
        string against,
        int rounds,
        Action subject,
        int subjectTimes,
        Action baseline,
        int baselineTimes
    ) => MeasureAsync(what, against, rounds, Waitless(subject), subjectTimes, Waitless(baseline), baselineTimes);

    private static Func<Task> Waitless(Action work) =>
        () =>
        {
            work();
            return Task.CompletedTask;
        };

    private static async Task<double> SecondsAsync(Func<Task> work, int times)
    {
        long start = Stopwatch.GetTimestamp();
        for (int time = 0; time < times; time++)
        {
            await work();
        }

        return Stopwatch.GetElapsedTime(start).TotalSeconds / times;
    }
}
