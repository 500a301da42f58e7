using RehabTrack.Rechecks.Exercise;
using RehabTrack.Web.Components.Exercise;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Plans;

/// <summary>The minutes of one gait as they are typed.</summary>
public sealed class GaitEntry
{
    /// <summary>Minutes in the first week.</summary>
    public string? FirstWeek { get; set; }

    /// <summary>Minutes more each week.</summary>
    public string? Growth { get; set; }

    /// <summary>The most minutes.</summary>
    public string? Ceiling { get; set; }

    /// <summary>Whether nothing is typed.</summary>
    public bool IsBlank => string.IsNullOrWhiteSpace(FirstWeek) && string.IsNullOrWhiteSpace(Growth) && string.IsNullOrWhiteSpace(Ceiling);

    /// <summary>A rule as fields show it.</summary>
    public static GaitEntry Of(GaitRule? rule) =>
        new()
        {
            FirstWeek = EntryNumbers.Text(rule?.Start),
            Growth = rule is { GrowthPerWeek: not 0 } ? EntryNumbers.Text(rule.GrowthPerWeek) : null,
            Ceiling = EntryNumbers.Text(rule?.Ceiling),
        };

    /// <summary>The rule; null when not filled, which permits nothing.</summary>
    /// <param name="numbers">Takes what cannot be read.</param>
    /// <param name="field">The field, as problems name it.</param>
    public GaitRule? Read(EntryNumbers numbers, string field)
    {
        ArgumentNullException.ThrowIfNull(numbers);
        int? first = numbers.Read(field, FirstWeek);
        int? growth = numbers.Read(field, Growth);
        int? ceiling = numbers.Read(field, Ceiling);
        if (first is { } start)
        {
            return new GaitRule(start, growth ?? 0, ceiling);
        }

        if (string.IsNullOrWhiteSpace(FirstWeek) && !IsBlank)
        {
            numbers.Add(field, PlanPage.FirstWeekMissing);
        }

        return null;
    }
}
