using RehabTrack.Rechecks.Suggestions;

namespace RehabTrack.Rechecks.Care;

/// <summary>What the record answers of a visit's questions beforehand; the vet can change every answer.</summary>
/// <param name="Day">The day of the visit.</param>
/// <param name="Medicine">The medicine that can hide lameness and is given on the day; null without one.</param>
/// <param name="ShockWave">The latest shock wave; null without one.</param>
/// <param name="Neurectomy">The cut nerve; null without one.</param>
public sealed record CareAnswers(DateOnly Day, CareEntry? Medicine, CareEntry? ShockWave, CareEntry? Neurectomy)
{
    /// <summary>Reads the record for a day.</summary>
    /// <param name="care">What is on record.</param>
    /// <param name="day">The day of the visit.</param>
    public static CareAnswers Of(IEnumerable<CareEntry> care, DateOnly day)
    {
        CareEntry[] known = [.. care.Where(entry => entry.From <= day).OrderBy(entry => entry.From)];
        return new CareAnswers(
            day,
            known.LastOrDefault(entry => CareRules.HidesLameness(entry.Kind) && entry.HoldsOn(day)),
            known.Where(entry => entry.Kind == CareKind.ShockWave).MaxBy(entry => LastDay(entry, day)),
            known.LastOrDefault(entry => entry.Kind == CareKind.Neurectomy)
        );
    }

    /// <summary>Fills in what the record answers. What is not on record stays not recorded: that nothing was written is no "no".</summary>
    /// <param name="signs">The answers so far.</param>
    public VisitSigns Fill(VisitSigns signs)
    {
        ArgumentNullException.ThrowIfNull(signs);
        return signs with
        {
            UnderAntiInflammatory = Medicine is null ? signs.UnderAntiInflammatory : true,
            HadShockWave = ShockWave is null ? signs.HadShockWave : true,
            LastShockWave = ShockWave is null ? signs.LastShockWave : LastDay(ShockWave, Day),
            HadNeurectomy = Neurectomy is null ? signs.HadNeurectomy : true,
        };
    }

    // Of a course of several days the last that was given by then counts.
    private static DateOnly LastDay(CareEntry entry, DateOnly day) =>
        entry.Until is not { } until ? entry.From
        : until < day ? until
        : day;
}
