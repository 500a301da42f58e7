using System.Globalization;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Simulation.Cases;

/// <summary>Links made by hand, where the truth is known.</summary>
public static class TrueLinks
{
    /// <summary>One track for each path and true place.</summary>
    /// <typeparam name="TPlace">What names a true place; orders along the limb.</typeparam>
    /// <param name="course">The course.</param>
    /// <param name="placeOf">The true place.</param>
    /// <param name="levelOf">The position of a true place.</param>
    /// <param name="doubt">The probability of a place's link; null when it is certain.</param>
    public static LinkedCourse Of<TPlace>(
        CaseCourse course,
        Func<Place, TPlace> placeOf,
        Func<TPlace, Centimetres> levelOf,
        Func<PlaceKey, double?>? doubt = null
    )
        where TPlace : notnull
    {
        ArgumentNullException.ThrowIfNull(course);
        List<Track> tracks = [];
        var places = course
            .Examinations.OrderBy(examination => examination.Date)
            .ThenBy(examination => examination.Id, StringComparer.Ordinal)
            .SelectMany(examination => Places.Of(examination).Select(place => (examination, place)))
            .GroupBy(pair => (pair.place.Key.Path, True: placeOf(pair.place)))
            .OrderBy(group => group.Key.Path)
            .ThenBy(group => group.Key.True);
        foreach (var group in places)
        {
            List<TrackStep> steps = [];
            foreach ((Examination examination, Place place) in group)
            {
                double? doubted = doubt?.Invoke(place.Key);
                steps.Add(
                    new TrackStep
                    {
                        ExaminationId = examination.Id,
                        Date = examination.Date,
                        Place = place,
                        LinkProbability = steps.Count == 0 ? null : doubted ?? 1,
                        Uncertain = steps.Count > 0 && doubted is not null,
                        Basis = steps.Count == 0 ? LinkBasis.First : LinkBasis.Computed,
                        Alternatives = [],
                    }
                );
            }

            tracks.Add(
                new Track(
                    string.Create(CultureInfo.InvariantCulture, $"{group.Key.Path}-{levelOf(group.Key.True).Value}"),
                    group.Key.Path,
                    group.First().place.Part,
                    levelOf(group.Key.True),
                    steps
                )
            );
        }

        ExaminationShift[] shifts =
        [
            .. course.Examinations.Select(examination => new ExaminationShift(examination.Id, new Centimetres(0), new Centimetres(0))),
        ];
        return new LinkedCourse(tracks, shifts);
    }
}
