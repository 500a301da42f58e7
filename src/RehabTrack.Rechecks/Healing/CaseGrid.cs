using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Rechecks.Healing;

/// <summary>A case as a grid of examinations by tracks, ordered and with everything that all measures share.</summary>
internal sealed class CaseGrid
{
    private readonly TrackStep?[,] _steps;
    private readonly bool[,] _otherMeasurer;
    private readonly HashSet<string> _apart;

    public CaseGrid(CaseCourse course, LinkedCourse links, MeasurementError error)
    {
        Course = course;
        Error = error;
        Examinations =
        [
            .. course.Examinations.OrderBy(examination => examination.Date).ThenBy(examination => examination.Id, StringComparer.Ordinal),
        ];
        Tracks =
        [
            .. links
                .Tracks.OrderBy(track => track.Path)
                .ThenBy(track => track.ConsensusLevel)
                .ThenBy(track => track.Id, StringComparer.Ordinal),
        ];
        _apart = [.. links.Apart];
        Stance = MajorityOf([.. Examinations.Where(examination => !_apart.Contains(examination.Id))]);
        Compared = [.. Enumerable.Range(0, Examinations.Count).Where(IsCompared)];
        _steps = new TrackStep?[Examinations.Count, Tracks.Count];
        _otherMeasurer = new bool[Examinations.Count, Tracks.Count];
        Dictionary<string, int> indexOf = Examinations
            .Select((examination, index) => (examination.Id, index))
            .ToDictionary(pair => pair.Id, pair => pair.index, StringComparer.Ordinal);
        for (int t = 0; t < Tracks.Count; t++)
        {
            foreach (TrackStep step in Tracks[t].Steps)
            {
                if (indexOf.TryGetValue(step.ExaminationId, out int e))
                {
                    _steps[e, t] = step;
                }
            }

            NoteMeasurers(t);
        }
    }

    public CaseCourse Course { get; }

    public MeasurementError Error { get; }

    /// <summary>By date and id.</summary>
    public IReadOnlyList<Examination> Examinations { get; }

    /// <summary>By path and consensus level.</summary>
    public IReadOnlyList<Track> Tracks { get; }

    /// <summary>The stance of most examinations; weight-bearing on a tie. Only it is compared.</summary>
    public Stance Stance { get; }

    /// <summary>Indices of the examinations of that stance whose tapes meet.</summary>
    public IReadOnlyList<int> Compared { get; }

    /// <summary>The scheme of the examinations that are compared, when their levels are zones; null for tapes.</summary>
    public ZoneScheme? Zones => Compared.Count > 0 ? Examinations[Compared[0]].Zones : null;

    public TrackStep? Step(int examination, int track) => _steps[examination, track];

    /// <summary>The places of an examination, by path and level.</summary>
    public IReadOnlyList<Place> PlacesAt(int examination)
    {
        List<Place> places = new(Tracks.Count);
        for (int t = 0; t < Tracks.Count; t++)
        {
            if (_steps[examination, t] is { } step)
            {
                places.Add(step.Place);
            }
        }

        places.Sort(
            (one, other) => one.Key.Path == other.Key.Path ? one.Level.CompareTo(other.Level) : one.Key.Path.CompareTo(other.Key.Path)
        );
        return places;
    }

    /// <summary>Whether another person measured this place than the last named one on its track.</summary>
    public bool OtherMeasurer(int examination, int track) => _otherMeasurer[examination, track];

    public bool IsCompared(int examination) => Examinations[examination].Stance == Stance && !IsApart(examination);

    /// <summary>Whether its tape starts at a landmark that no measured distance leads to, or its levels are told in another way.</summary>
    public bool IsApart(int examination) => _apart.Contains(Examinations[examination].Id);

    private static Stance MajorityOf(IReadOnlyList<Examination> examinations)
    {
        int raised = examinations.Count(examination => examination.Stance == Stance.NonWeightBearing);
        return raised > examinations.Count - raised ? Stance.NonWeightBearing : Stance.WeightBearing;
    }

    private void NoteMeasurers(int t)
    {
        HashSet<string>? before = null;
        foreach (int e in Compared)
        {
            if (_steps[e, t] is not { } step)
            {
                continue;
            }

            // One person throughout, as in most cases.
            if (before is { Count: 1 } && step.Place.Readings is [{ Measurer: { } name }] && before.Contains(name.Trim()))
            {
                continue;
            }

            HashSet<string> now = MeasurersOf(step.Place.Readings);
            if (now.Count == 0)
            {
                continue;
            }

            _otherMeasurer[e, t] = before is not null && !before.Overlaps(now);
            before = now;
        }
    }

    /// <summary>The persons named as measurers, without regard to case.</summary>
    public static HashSet<string> MeasurersOf(IEnumerable<Reading> readings) =>
        readings
            .Select(reading => reading.Measurer?.Trim())
            .Where(name => !string.IsNullOrEmpty(name))
            .Select(name => name!)
            .ToHashSet(StringComparer.OrdinalIgnoreCase);
}
