using System.Globalization;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Rechecks.Linking;

/// <summary>Examinations whose tape meets no other: every place a track of its own, so that nothing is lost and nothing is compared.</summary>
internal static class StandingApart
{
    public static LinkedCourse Add(LinkedCourse linked, IReadOnlyList<Examination> apart, IReadOnlyList<Examination> all)
    {
        Dictionary<string, ExaminationShift> shifts = linked.Shifts.ToDictionary(shift => shift.ExaminationId, StringComparer.Ordinal);
        Examination[] ordered =
        [
            .. all.OrderBy(examination => examination.Date).ThenBy(examination => examination.Id, StringComparer.Ordinal),
        ];
        HashSet<string> ids = [.. apart.Select(examination => examination.Id)];
        return linked with
        {
            Tracks =
            [
                .. linked
                    .Tracks.Concat(ordered.Where(examination => ids.Contains(examination.Id)).SelectMany(Places.Of, TrackOf))
                    .OrderBy(track => track.Path),
            ],
            Shifts =
            [
                .. ordered.Select(examination =>
                    shifts.GetValueOrDefault(examination.Id) ?? new ExaminationShift(examination.Id, default, default)
                ),
            ],
            Apart = [.. ordered.Select(examination => examination.Id).Where(ids.Contains)],
        };
    }

    private static Track TrackOf(Examination examination, Place place) =>
        new(
            string.Create(CultureInfo.InvariantCulture, $"apart-{examination.Id}-{place.Key.Path}-{place.Level}"),
            place.Key.Path,
            place.Part,
            place.Level,
            [
                new TrackStep
                {
                    ExaminationId = examination.Id,
                    Date = examination.Date,
                    Place = place,
                    LinkProbability = null,
                    Uncertain = false,
                    Basis = LinkBasis.First,
                    Alternatives = [],
                },
            ]
        );
}
