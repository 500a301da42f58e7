using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Web.Features.Cases;

/// <summary>One place of one examination, with the track it is on: what a person chooses in the ladder.</summary>
/// <param name="Track">The track.</param>
/// <param name="Step">The step of the track.</param>
public sealed record Rung(Track Track, TrackStep Step)
{
    /// <summary>The other examinations of the same place, by date.</summary>
    public IEnumerable<TrackStep> Others => Track.Steps.Where(step => step.ExaminationId != Step.ExaminationId);

    /// <summary>The rung that the address names; null when there is none.</summary>
    /// <param name="analysis">The analysis of the case.</param>
    /// <param name="course">The case.</param>
    /// <param name="query">The address.</param>
    public static Rung? Find(CaseAnalysis analysis, CaseCourse course, CaseQuery query)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(course);
        ArgumentNullException.ThrowIfNull(query);
        if (query is not { Date: { } date } || (query.Level is null && query.Zone is null))
        {
            return null;
        }

        HashSet<string> examinations =
        [
            .. course
                .Examinations.Where(one => one.Date == date && (query.Examination is null || one.Name == query.Examination))
                .Select(one => one.Id),
        ];
        return analysis
            .Links.Tracks.Where(track => query.Path is null || track.Path == query.Path)
            .SelectMany(track => track.Steps.Select(step => new Rung(track, step)))
            .FirstOrDefault(rung => examinations.Contains(rung.Step.ExaminationId) && IsAt(rung.Step.Place.Level, query));
    }

    private static bool IsAt(Level level, CaseQuery query)
    {
        const double SameLevelCm = 0.001;
        return level.Zone is { } zone
            ? string.Equals(zone.Name, query.Zone, StringComparison.OrdinalIgnoreCase)
            : level.OnTape is { } tape && query.Level is { } wanted && Math.Abs(tape.Value - wanted.Value) < SameLevelCm;
    }

    /// <summary>The part of the address that names a place of an examination.</summary>
    /// <param name="query">The view it is shown in.</param>
    /// <param name="course">The case.</param>
    /// <param name="key">The place.</param>
    public static CaseQuery Choose(CaseQuery query, CaseCourse course, PlaceKey key)
    {
        ArgumentNullException.ThrowIfNull(query);
        ArgumentNullException.ThrowIfNull(course);
        Examination examination = course.Examinations.First(one => one.Id == key.ExaminationId);
        return query with
        {
            Date = examination.Date,
            Examination = examination.Name,
            Level = key.Level.OnTape,
            Zone = key.Level.Zone?.Name,
            Path = key.Path,
            Compare = null,
        };
    }
}
