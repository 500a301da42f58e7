using RehabTrack.Rechecks.Analysis;
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
        const double SameLevelCm = 0.001;
        if (query is not { Date: { } date, Level: { } level })
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
            .FirstOrDefault(rung =>
                examinations.Contains(rung.Step.ExaminationId) && Math.Abs(rung.Step.Place.Level.Value - level.Value) < SameLevelCm
            );
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
        return query with { Date = examination.Date, Examination = examination.Name, Level = key.Level, Path = key.Path, Compare = null };
    }
}
