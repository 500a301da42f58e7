using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Rechecks.Healing;

/// <summary>The areas of one lesion, or of all lesions of a case, on the grid of examinations by tracks, and the volumes that follow.</summary>
internal sealed class LesionGrid
{
    private readonly CaseGrid _case;
    private readonly LesionCell[,] _cells;
    private readonly int[][] _windows;
    private readonly bool[] _isFollowed;
    private readonly bool[] _hasLesion;
    private readonly IReadOnlyList<int>?[] _missed;
    private readonly Dictionary<LinkPath, int[]> _paths;
    private readonly (bool IsRead, VolumeFigure? Figure)[] _volumes;
    private readonly Dictionary<(int Examination, int Track), double> _gradient = [];

    /// <param name="grid">The case.</param>
    /// <param name="lesion">The lesion; null for all lesions together.</param>
    /// <param name="path">The path whose lesions are meant; null for that of the lesion, or for all.</param>
    public LesionGrid(CaseGrid grid, LesionKey? lesion, LinkPath? path = null)
    {
        _case = grid;
        Lesion = lesion;
        Path = lesion?.Path ?? path;
        _cells = new LesionCell[grid.Examinations.Count, grid.Tracks.Count];
        for (int t = 0; t < grid.Tracks.Count; t++)
        {
            if (Path is { } only && only != grid.Tracks[t].Path)
            {
                continue;
            }

            for (int e = 0; e < grid.Examinations.Count; e++)
            {
                if (grid.Step(e, t) is { } step)
                {
                    _cells[e, t] = CellOf(step, lesion);
                }
            }
        }

        _missed = new IReadOnlyList<int>?[grid.Examinations.Count];
        _volumes = new (bool, VolumeFigure?)[grid.Examinations.Count];
        _paths = Enumerable
            .Range(0, grid.Tracks.Count)
            .GroupBy(t => grid.Tracks[t].Path)
            .ToDictionary(tracks => tracks.Key, tracks => tracks.ToArray());
        _hasLesion = new bool[grid.Tracks.Count];
        for (int e = 0; e < grid.Examinations.Count; e++)
        {
            for (int t = 0; t < grid.Tracks.Count; t++)
            {
                _hasLesion[t] |= _cells[e, t].IsAbnormal;
            }
        }

        Windows = [.. WindowsOf(static cell => cell.IsKnown)];
        _isFollowed = new bool[grid.Tracks.Count];
        foreach (int track in Windows.Concat(WindowsOf(static cell => cell.IsAssessed || cell.IsAbnormal)).SelectMany(window => window))
        {
            _isFollowed[track] = true;
        }

        int[][] withLesion =
        [
            .. Windows.Where(window => Array.Exists(TracksOfPath(grid.Tracks[window[0]].Path), HasLesionEver)).Select(AroundLesion),
        ];
        _windows = withLesion.Length > 0 ? withLesion : [.. Windows];
    }

    /// <summary>The one lesion it speaks of; null for all.</summary>
    public LesionKey? Lesion { get; }

    /// <summary>The one path it speaks of; null for all.</summary>
    public LinkPath? Path { get; }

    /// <summary>The common window of each path: indices of its tracks, in order of consensus level; a path without one is left out.</summary>
    public IReadOnlyList<int[]> Windows { get; }

    public LesionCell Cell(int examination, int track) => _cells[examination, track];

    /// <summary>Whether the track shows the lesion at any examination.</summary>
    public bool HasLesionEver(int track) => _hasLesion[track];

    /// <summary>
    /// The volume at an examination over the common window: trapezoids on consensus positions, so that a tape read differently changes
    /// nothing. Null when a lesion there cannot be outlined, a path with lesion was not read, a missed level cannot be filled, or levels are
    /// zones whose length was not measured on the horse.
    /// </summary>
    public VolumeFigure? VolumeAt(int examination)
    {
        if (!_volumes[examination].IsRead)
        {
            _volumes[examination] = (true, FindVolume(examination, null));
        }

        return _volumes[examination].Figure;
    }

    /// <summary>
    /// The volume with the error it has beside another examination: readings that another person made than there are widened.
    /// </summary>
    public VolumeFigure? VolumeAt(int examination, int reference) =>
        _case.HasOneMeasurer || examination == reference ? VolumeAt(examination) : FindVolume(examination, reference);

    /// <summary>SD of the area on a track, cm², gain not included, beside another examination: widened where another person measured than there.</summary>
    public double DeviationAt(int examination, int track, int reference) =>
        _cells[examination, track].StandardDeviation * _case.Error.MeasurerFactor(_case.OtherMeasurer(examination, track, reference));

    private VolumeFigure? FindVolume(int examination, int? reference)
    {
        double volume = 0;
        _gradient.Clear();
        double doubt = 0;
        bool any = false;
        bool lowerBound = false;
        foreach (int[] window in _windows)
        {
            if (window.Length < 2)
            {
                lowerBound |= Array.Exists(window, track => _cells[examination, track].IsAbnormal);
                continue;
            }

            int[] path = TracksOfPath(_case.Tracks[window[0]].Path);
            if (
                Array.Exists(path, track => IsOfUnknownSize(examination, track))
                || !Array.Exists(window, track => _cells[examination, track].IsKnown)
                || (Array.Exists(path, HasLesionEver) && !Array.Exists(window, HasSize))
            )
            {
                return null;
            }

            if (Level.ScaleOf(_case.Tracks[window[0]].ConsensusLevel.Scheme, _case.Course.ZoneLength) is not { } scale)
            {
                return null;
            }

            any = true;
            for (int i = 0; i < window.Length; i++)
            {
                double weight =
                    scale * (PositionOf(window, Math.Min(i + 1, window.Length - 1)) - PositionOf(window, Math.Max(i - 1, 0))) / 2;
                int track = window[i];
                double? read = _cells[examination, track].IsKnown ? _cells[examination, track].Area : null;
                if (read is not null)
                {
                    HangsOn(examination, track, weight, 1);
                    doubt += weight * weight * DoubtOf(examination, window, track);
                }

                if ((read ?? Filled(examination, window, track, weight)) is not { } area)
                {
                    return null;
                }

                volume += weight * area;
                lowerBound |= area > 0 && (i == 0 || i == window.Length - 1);
            }

            lowerBound |= ShowsLesionBeyond(examination, window);
        }

        if (!any)
        {
            return null;
        }

        double variance = 0;
        foreach (((int e, int t), double slope) in _gradient)
        {
            double error = slope * (reference is { } other ? DeviationAt(e, t, other) : _cells[e, t].StandardDeviation);
            variance += error * error;
        }

        double gain = _case.Error.SharedGainLog * volume;
        return new VolumeFigure(volume, Math.Max(Math.Sqrt(variance + doubt + (gain * gain)), 1e-9), lowerBound);
    }

    /// <summary>
    /// Tracks that showed lesion at their latest earlier reading of the same stance and whose lesion was not read here, or whose link here
    /// is uncertain: tracks read at two examinations or more, and those first read at the examination before.
    /// </summary>
    public IReadOnlyList<int> MissedAt(int examination) => _missed[examination] ??= FindMissed(examination);

    /// <summary>
    /// Whether the level that was worst so far is missing or uncertain here, or the level that is worst now hangs on an uncertain link.
    /// </summary>
    public bool WorstMissedAt(int examination)
    {
        int worstBefore = -1;
        double rankBefore = -1;
        int worstNow = -1;
        double rankNow = 0;
        for (int t = 0; t < _case.Tracks.Count; t++)
        {
            if (FollowedLesionBefore(examination, t) is { } last)
            {
                double rank = _cells[last, t].Rank;
                (worstBefore, rankBefore) = rank > rankBefore ? (t, rank) : (worstBefore, rankBefore);
            }

            if (_cells[examination, t].Rank > rankNow)
            {
                (worstNow, rankNow) = (t, _cells[examination, t].Rank);
            }
        }

        return (worstBefore >= 0 && MissedAt(examination).Contains(worstBefore))
            || (worstNow >= 0 && _cells[examination, worstNow].IsUncertain);
    }

    private List<int> FindMissed(int examination)
    {
        List<int> missed = [];
        for (int t = 0; t < _case.Tracks.Count; t++)
        {
            if (FollowedLesionBefore(examination, t) is not null && (_cells[examination, t].IsUncertain || IsUnread(examination, t)))
            {
                missed.Add(t);
            }
        }

        return missed;
    }

    /// <summary>
    /// Whether the lesion on a track was not read at an examination: neither an area nor a share, or, where no size of it was ever
    /// recorded before, no reading at all.
    /// </summary>
    public bool IsUnread(int examination, int track)
    {
        LesionCell cell = _cells[examination, track];
        return !cell.IsAssessed && (!cell.IsRead || cell.IsDiffuse || Enumerable.Range(0, _case.Tracks.Count).Any(HasBeenSized));

        bool HasBeenSized(int t) => _case.Compared.Any(e => e < examination && _cells[e, t] is { IsAssessed: true, IsAbnormal: true });
    }

    private LesionCell CellOf(TrackStep step, LesionKey? lesion)
    {
        LesionArea area = lesion is { } only ? only.AreaAt(step.Place) : LesionKey.AreaOfAll(step.Place);
        bool abnormal = lesion?.ShowsAt(step.Place) ?? step.Place.IsAbnormal;
        double? share = (lesion is { } own ? own.ShareAt(step.Place) : step.Place.LesionPercent)?.Value;
        return area.MeasuredArea is { } known
            ? new LesionCell(
                true,
                LesionAreaKind.Measured,
                known.Value,
                _case.Error.OfLesionArea(known, step.Place.Part, otherMeasurer: false, step.Place.Tracings).Value,
                step.Uncertain,
                abnormal,
                share,
                step.LinkProbability ?? 1
            )
            : new LesionCell(true, area.Kind, 0, 0, step.Uncertain, abnormal, share, step.LinkProbability ?? 1);
    }

    private IEnumerable<int[]> WindowsOf(Func<LesionCell, bool> isRead)
    {
        foreach (int[] tracks in _paths.Values)
        {
            int[] examinations = [.. _case.Compared.Where(e => Array.Exists(tracks, track => isRead(_cells[e, track])))];
            int[] window = examinations.Length switch
            {
                0 => [],
                // Two examinations: the levels of the first, so that a level missed at the second is named and filled, not forgotten.
                1 or 2 => Array.FindAll(tracks, track => isRead(_cells[examinations[0], track])),
                _ => Array.FindAll(tracks, track => examinations.Count(e => isRead(_cells[e, track])) >= 2),
            };
            if (window.Length > 0)
            {
                yield return window;
            }
        }
    }

    // From the level before the first that ever showed lesion to the one after the last: levels further off hold nothing, without error.
    private int[] AroundLesion(int[] window)
    {
        int first = Array.FindIndex(window, HasLesionEver);
        int last = Array.FindLastIndex(window, HasLesionEver);
        return first < 0 ? window : window[Math.Max(0, first - 1)..Math.Min(window.Length, last + 2)];
    }

    private int[] TracksOfPath(LinkPath path) => _paths[path];

    private double PositionOf(int[] window, int index) => _case.Tracks[window[index]].ConsensusLevel.Position.Value;

    private bool ShowsLesionBeyond(int examination, int[] window)
    {
        Level first = _case.Tracks[window[0]].ConsensusLevel;
        Level last = _case.Tracks[window[^1]].ConsensusLevel;
        return Array.Exists(
            TracksOfPath(_case.Tracks[window[0]].Path),
            track =>
                _cells[examination, track].IsAbnormal
                && (_case.Tracks[track].ConsensusLevel < first || _case.Tracks[track].ConsensusLevel > last)
        );
    }

    // A lesion that shows and has no area, nor one that could be carried on: it may be of any size.
    private bool IsOfUnknownSize(int examination, int track) =>
        _cells[examination, track].IsDiffuse
        || (_cells[examination, track] is { IsAbnormal: true, IsKnown: false } && !(SourceAreaOf(examination, track) > 0));

    private double? SourceAreaOf(int examination, int track) =>
        NearestKnown(examination, track) is { } source ? _cells[source, track].Area : null;

    private bool HasSize(int track) => _case.Compared.Any(e => _cells[e, track] is { IsKnown: true, Area: > 0 });

    private void HangsOn(int examination, int track, double weight, double slope) =>
        _gradient[(examination, track)] = _gradient.GetValueOrDefault((examination, track)) + (weight * slope);

    /// <summary>
    /// The area of a missed level: its nearest earlier area (else the nearest later) times the common change of the levels read at both.
    /// With a weight it notes how the volume hangs on each reading through that area, from which its error follows.
    /// </summary>
    private double? Filled(int examination, int[] window, int track, double? weight)
    {
        if (NearestKnown(examination, track) is not { } source)
        {
            return null;
        }

        double area = _cells[source, track].Area;
        double then = 0;
        double now = 0;
        foreach (int t in window)
        {
            if (IsReadAtBoth(t))
            {
                then += _cells[source, t].Area;
                now += _cells[examination, t].Area;
            }
        }

        if (then > 0)
        {
            if (weight is { } filled)
            {
                HangsOn(source, track, filled, now / then);
                foreach (int t in window)
                {
                    if (IsReadAtBoth(t))
                    {
                        HangsOn(examination, t, filled, area / then);
                        HangsOn(source, t, filled, -area * now / (then * then));
                    }
                }
            }

            return area * now / then;
        }

        // Without another level of the lesion the common change is not known; only a level that was free of lesion may be carried on.
        if (area > 0)
        {
            return null;
        }

        if (weight is { } free)
        {
            HangsOn(source, track, free, 1);
        }

        return 0;

        bool IsReadAtBoth(int t) => t != track && _cells[examination, t].IsKnown && _cells[source, t].IsKnown;
    }

    // With the probability that a reading belongs elsewhere, the track's area is what its history says: the mean square of that error.
    private double DoubtOf(int examination, int[] window, int track)
    {
        LesionCell cell = _cells[examination, track];
        if (cell.LinkProbability >= 1 || Filled(examination, window, track, null) is not { } expected)
        {
            return 0;
        }

        return (1 - cell.LinkProbability) * (cell.Area - expected) * (cell.Area - expected);
    }

    private int? NearestKnown(int examination, int track)
    {
        int? earlier = null;
        foreach (int e in _case.Compared)
        {
            if (e < examination && _cells[e, track].IsKnown)
            {
                earlier = e;
            }
            else if (e > examination && _cells[e, track].IsKnown)
            {
                return earlier ?? e;
            }
        }

        return earlier;
    }

    // The latest earlier examination at which the track was read with a known area or shows lesion.
    private int? LastKnown(int examination, int track)
    {
        int? last = null;
        foreach (int e in _case.Compared)
        {
            last = e < examination && (_cells[e, track].IsAssessed || _cells[e, track].IsAbnormal) ? e : last;
        }

        return last;
    }

    private int? LastBefore(int examination)
    {
        int? last = null;
        foreach (int e in _case.Compared)
        {
            last = e < examination ? e : last;
        }

        return last;
    }

    // The latest earlier reading of a track that showed lesion there; null when it did not, or when the track was met once, long ago.
    private int? FollowedLesionBefore(int examination, int track) =>
        LastKnown(examination, track) is { } last
        && _cells[last, track].IsAbnormal
        && (_isFollowed[track] || last == LastBefore(examination) || _cells[examination, track].IsRead)
            ? last
            : null;
}
