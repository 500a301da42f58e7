using System.Globalization;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Wording;

/// <summary>A projection in sentences, for a vet.</summary>
public static class ProjectionSentences
{
    // Below one in a hundred there is nothing to plan a recheck by.
    private const double WorthTelling = 0.01;

    /// <summary>When the target may be reached, as far as the examinations carry.</summary>
    /// <param name="projection">The projection.</param>
    /// <param name="target">The target with its unit.</param>
    /// <param name="culture">The reader's language; null for the usual one.</param>
    public static string Of(Projection projection, string target, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(projection);
        string Day(DateOnly? day) => Figures.Date(day, null, culture);
        string limit = Day(projection.Limit);
        string byLimit = Share(projection.ReachedByLimit, culture);
        string when = projection switch
        {
            { Lower90: null } => Said("Projection_Far", culture, target, limit, byLimit),
            { Median: null } => Said("Projection_Early", culture, target, Day(projection.Lower90), limit, byLimit),
            { Upper50: null } => Said("Projection_Half", culture, target, Day(projection.Lower90), Day(projection.Median), limit, byLimit),
            _ => Said(
                projection.Upper90 is null ? "Projection_Open" : "Projection_Range",
                culture,
                target,
                Day(projection.Lower50),
                Day(projection.Upper50),
                Day(projection.Lower90),
                Day(projection.Upper90)
            ),
        };
        return projection.Next >= projection.Limit || projection.ReachedByNext < WorthTelling
            ? when
            : $"{when} {Said("Projection_Next", culture, Day(projection.Next), Share(projection.ReachedByNext, culture))}";
    }

    private static string Share(double probability, CultureInfo? culture) => Figures.Percent(new Percent(100 * probability), null, culture);

    private static string Said(string key, CultureInfo? culture, params object?[] arguments) =>
        string.Format(
            culture ?? TextCulture.Default,
            Verdicts.ResourceManager.GetString(key, culture ?? TextCulture.Default)
                ?? throw new ArgumentOutOfRangeException(nameof(key), key, "There is no such text."),
            arguments
        );
}
