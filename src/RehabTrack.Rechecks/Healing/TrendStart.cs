using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Rechecks.Healing;

/// <summary>When the trend of a case may start.</summary>
public static class TrendStart
{
    /// <summary>
    /// The first date that counts: the acute phase after the latest of onset and re-injury must be over, by date and never by the largest
    /// value. Null when neither date is known: then the trend starts at the first examination, with a caution.
    /// </summary>
    /// <param name="course">The case.</param>
    /// <param name="settings">Holds the length of the acute phase.</param>
    /// <param name="asOf">The date it speaks for; a re-injury after it is not known yet.</param>
    public static DateOnly? Of(CaseCourse course, TrendSettings settings, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(course);
        ArgumentNullException.ThrowIfNull(settings);
        DateOnly? reinjury = course.Reinjury <= asOf ? course.Reinjury : null;
        DateOnly? latest = course.Onset is { } onset && reinjury is { } again ? (onset > again ? onset : again) : course.Onset ?? reinjury;
        return latest?.AddDays(settings.AcutePhaseDays);
    }
}
