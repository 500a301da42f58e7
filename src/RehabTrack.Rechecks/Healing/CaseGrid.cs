using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Rechecks.Healing;

/// <summary>A case as a grid of examinations by tracks, ordered and with everything that all measures share.</summary>
internal sealed class CaseGrid
{
    private readonly TrackStep?[,] _steps;
    private readonly HashSet<string>?[,] _measurers;
    private readonly HashSet<string>?[] _measurersOfExaminations;
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
        _measurers = new HashSet<string>?[Examinations.Count, Tracks.Count];
        _measurersOfExaminations = new HashSet<string>?[Examinations.Count];
        HasOneMeasurer = NamesOne(Examinations);
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

    /// <summary>Whether at most one person is named as measurer.</summary>
    public bool HasOneMeasurer { get; }

    /// <summary>
    /// Whether another person measured a place than measured it at the examination it is compared with, or, where that one did not read
    /// the place, than measured there at all. Where nobody is named, the same person is taken.
    /// </summary>
    public bool OtherMeasurer(int examination, int track, int reference) =>
        !HasOneMeasurer
        && examination != reference
        && _steps[examination, track] is not null
        && AreOthers(
            MeasurersAt(examination, track),
            _steps[reference, track] is null ? MeasurersAt(reference) : MeasurersAt(reference, track)
        );

    /// <summary>Whether anybody is named as measurer at an examination, on a track when one is given.</summary>
    public bool IsMeasurerNamed(int examination, int? track) =>
        (track is { } only ? MeasurersAt(examination, only) : MeasurersAt(examination)).Count > 0;

    /// <summary>Whether nobody who measured at one examination measured at the other.</summary>
    public bool OtherMeasurer(int examination, int reference) =>
        !HasOneMeasurer && examination != reference && AreOthers(MeasurersAt(examination), MeasurersAt(reference));

    /// <summary>Whether two groups of persons, both named, have nobody in common.</summary>
    public static bool AreOthers(HashSet<string> one, HashSet<string> other) => one.Count > 0 && other.Count > 0 && !one.Overlaps(other);

    public bool IsCompared(int examination) => Examinations[examination].Stance == Stance && !IsApart(examination);

    /// <summary>Whether its tape starts at a landmark that no measured distance leads to, or its levels are told in another way.</summary>
    public bool IsApart(int examination) => _apart.Contains(Examinations[examination].Id);

    private static Stance MajorityOf(IReadOnlyList<Examination> examinations)
    {
        int raised = examinations.Count(examination => examination.Stance == Stance.NonWeightBearing);
        return raised > examinations.Count - raised ? Stance.NonWeightBearing : Stance.WeightBearing;
    }

    private static bool NamesOne(IReadOnlyList<Examination> examinations)
    {
        ReadOnlySpan<char> only = default;
        foreach (Examination examination in examinations)
        {
            foreach (Reading reading in examination.Readings)
            {
                ReadOnlySpan<char> name = reading.Measurer.AsSpan().Trim();
                if (!name.IsEmpty && !only.IsEmpty && !name.Equals(only, StringComparison.OrdinalIgnoreCase))
                {
                    return false;
                }

                only = name.IsEmpty ? only : name;
            }
        }

        return true;
    }

    private HashSet<string> MeasurersAt(int examination, int track) =>
        _measurers[examination, track] ??= MeasurersOf(_steps[examination, track]!.Place.Readings);

    private HashSet<string> MeasurersAt(int examination) =>
        _measurersOfExaminations[examination] ??= MeasurersOf(Examinations[examination].Readings);

    /// <summary>The persons named as measurers, without regard to case.</summary>
    public static HashSet<string> MeasurersOf(IEnumerable<Reading> readings) =>
        readings
            .Select(reading => reading.Measurer?.Trim())
            .Where(name => !string.IsNullOrEmpty(name))
            .Select(name => name!)
            .ToHashSet(StringComparer.OrdinalIgnoreCase);
}
