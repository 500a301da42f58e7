using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Findings;

/// <summary>What a person must be told of a case.</summary>
internal sealed class FindingReader(
    CaseGrid grid,
    LesionGrid lesions,
    LinkedCourse links,
    IReadOnlyList<ExaminationBurden> burdens,
    TrendSettings settings,
    IReadOnlyList<int> trend
)
{
    // Shares are quotients: a rise of exactly 10 % must not be told by its last binary digit.
    private const double Rounding = 1e-9;

    private readonly List<Finding> _findings = [];

    private int Latest => grid.Compared[^1];

    /// <summary>All findings, those of the latest examination and of the course first, worst first.</summary>
    public IReadOnlyList<Finding> Read(Trend caseTrend, IReadOnlyList<LesionTrend> lesionTrends)
    {
        if (grid.Examinations.Count == 0)
        {
            return [];
        }

        OfTrends(caseTrend, lesionTrends);
        for (int i = 0; i < grid.Compared.Count; i++)
        {
            OfExamination(grid.Compared[i], i > 0 ? grid.Compared[i - 1] : null);
        }

        OfNotCompared();
        OfLinks();
        OfShifts();
        OfMeasurers();
        OfStart();
        OfLatest();
        return
        [
            .. _findings
                .OrderBy(finding => finding.IsEarlier)
                .ThenByDescending(finding => finding.Severity)
                .ThenByDescending(finding => finding.Date)
                .ThenBy(finding => finding.Kind)
                .ThenBy(finding => finding.Part)
                .ThenBy(finding => finding.Level)
                .ThenBy(finding => finding.TrackId, StringComparer.Ordinal)
                .ThenBy(finding => finding.Lesion, StringComparer.Ordinal)
                .ThenBy(finding => finding.ExaminationId, StringComparer.Ordinal),
        ];
    }

    private void OfTrends(Trend caseTrend, IReadOnlyList<LesionTrend> lesionTrends)
    {
        void Add(Trend trend, LesionTrend? lesion)
        {
            (FindingKind Kind, FindingSeverity Severity)? told = trend.Verdict switch
            {
                Verdict.Worsening => (FindingKind.Worsening, FindingSeverity.Red),
                Verdict.Stalled => (FindingKind.NoProgress, FindingSeverity.Amber),
                Verdict.HealingSlowly => (FindingKind.HealingSlowly, FindingSeverity.Amber),
                Verdict.Healing or Verdict.AtTarget or Verdict.NotYetReadable => null,
            };
            if (told is { } finding)
            {
                _findings.Add(
                    new Finding
                    {
                        Kind = finding.Kind,
                        Severity = finding.Severity,
                        Date = trend.Since,
                        Lesion = lesion?.Lesion,
                        Part = lesion?.Part,
                        ChangePercent = trend.ChangePercent,
                        DetectablePercent = trend.ChangePercent >= 0 ? trend.DetectableRisePercent : trend.DetectableFallPercent,
                    }
                );
            }
        }

        Add(caseTrend, null);
        foreach (LesionTrend lesion in lesionTrends)
        {
            // A case of one lesion speaks once.
            if (lesionTrends.Count > 1)
            {
                Add(lesion.Trend, lesion);
            }
        }
    }

    private void OfExamination(int e, int? previous)
    {
        HashSet<string> namedBefore = previous is null
            ? []
            : [.. grid.Compared.Where(earlier => earlier < e).SelectMany(earlier => LesionNamesOf(grid.Examinations[earlier]))];
        for (int t = 0; t < grid.Tracks.Count; t++)
        {
            if (grid.Step(e, t) is not { } step)
            {
                continue;
            }

            if (step.Place.LesionArea.Kind == LesionAreaKind.Diffuse && e == Latest)
            {
                Add(FindingKind.DiffuseLesion, FindingSeverity.Note, e, t);
            }

            if (e == Latest)
            {
                OfOtherLimb(e, t, step);
            }

            if (LastReadBefore(e, t) is { } before)
            {
                OfLigamentArea(e, t, before, step);
                OfLesion(e, t, before, step);
                OfGrades(e, t, before, step);
            }
            else if (previous is { } last && step.Place.IsAbnormal)
            {
                OfNewLevel(e, t, last, step, namedBefore);
            }
        }
    }

    // Amber and red go by the share alone; the error only adds "measure again" (trade practice: a caution is never held back).
    private void OfLigamentArea(int e, int t, int before, TrackStep step)
    {
        if (step.Place.LigamentArea is not { } now || grid.Step(before, t)?.Place.LigamentArea is not { Value: > 0 } then)
        {
            return;
        }

        double share = (now / then) - 1;
        if (LigamentRise.SeverityOf(share, settings) is not { } severity)
        {
            return;
        }

        double variance = LogVariance(e, t, now, before) + LogVariance(before, t, then, before);
        double detectable = Math.Exp(ComparisonFactors.Single * Math.Sqrt(variance)) - 1;
        bool mayBeError = share <= detectable;
        if (e != Latest && mayBeError)
        {
            return;
        }

        Add(
            FindingKind.LigamentAreaRise,
            severity,
            e,
            t,
            finding =>
                finding with
                {
                    ComparedWith = grid.Examinations[before].Date,
                    ChangePercent = 100 * share,
                    DetectablePercent = 100 * detectable,
                    MayBeMeasurementError = mayBeError,
                    Probability = UncertainProbability(t, before, step),
                }
        );
    }

    // More than a fifth larger than the other limb is abnormal in the SDFT (Berner 2017); elsewhere an extrapolation.
    private void OfOtherLimb(int e, int t, TrackStep step)
    {
        if (
            grid.Course.OtherLimb == OtherLimb.HasLesion
            || step.Place.LigamentArea is not { } own
            || step.Place.OtherLimbLigamentArea is not { Value: > 0 } other
        )
        {
            return;
        }

        double share = (own / other) - 1;
        if (share <= settings.OtherLimbEnlargement + Rounding)
        {
            return;
        }

        double variance = LogVariance(e, t, own, e) + LogVariance(e, t, other, e);
        double detectable = Math.Exp(ComparisonFactors.Single * Math.Sqrt(variance)) - 1;
        Add(
            FindingKind.LargerThanOtherLimb,
            FindingSeverity.Note,
            e,
            t,
            finding =>
                finding with
                {
                    ChangePercent = 100 * share,
                    DetectablePercent = 100 * detectable,
                    MayBeMeasurementError = share <= detectable,
                }
        );
    }

    // Beside another examination: wider where another person measured than there.
    private double LogVariance(int e, int t, SquareCentimetres area, int reference)
    {
        Place place = grid.Step(e, t)!.Place;
        double cv = grid.Error.OfLigamentArea(area, place.Part, grid.OtherMeasurer(e, t, reference), place.Tracings) / area;
        double log = MeasurementError.LogStandardDeviation(cv);
        return (log * log) + (grid.Error.SharedGainLog * grid.Error.SharedGainLog);
    }

    private void OfLesion(int e, int t, int before, TrackStep step)
    {
        Place earlier = grid.Step(before, t)!.Place;
        bool wasNormal = !earlier.IsAbnormal && LesionKey.AreaOfAll(earlier).Kind == LesionAreaKind.Measured;
        if (!wasNormal || !step.Place.IsAbnormal)
        {
            return;
        }

        LesionCell then = lesions.Cell(before, t);
        LesionCell now = lesions.Cell(e, t);
        bool mayBeError = now.IsKnown && now.Area - then.Area <= DetectableArea(e, t, before);
        if (e != Latest && mayBeError)
        {
            return;
        }

        Add(
            FindingKind.NewlyAbnormalLevel,
            FindingSeverity.Red,
            e,
            t,
            finding =>
                finding with
                {
                    ComparedWith = grid.Examinations[before].Date,
                    MayBeMeasurementError = mayBeError,
                    Probability = UncertainProbability(t, before, step),
                }
        );
    }

    private double DetectableArea(int e, int t, int before)
    {
        double now = lesions.DeviationAt(e, t, before);
        double then = lesions.DeviationAt(before, t, before);
        return ComparisonFactors.Single * Math.Sqrt((now * now) + (then * then));
    }

    private void OfNewLevel(int e, int t, int previous, TrackStep step, HashSet<string> namedBefore)
    {
        int[] path =
        [
            .. Enumerable
                .Range(0, grid.Tracks.Count)
                .Where(other => other != t && grid.Tracks[other].Path == grid.Tracks[t].Path && grid.Step(previous, other) is not null),
        ];
        if (path.Length == 0 && e != Latest)
        {
            return;
        }

        // Beside a level that showed lesion it belongs to that lesion; between or beside normal ones it is new.
        int above = Array.FindLastIndex(path, other => other < t);
        int below = Array.FindIndex(path, other => other > t);
        bool besideLesion =
            (above >= 0 && grid.Step(previous, path[above])!.Place.IsAbnormal)
            || (below >= 0 && grid.Step(previous, path[below])!.Place.IsAbnormal);
        string[] names = [.. LesionNamesOf(step.Place.Readings)];
        bool newName = namedBefore.Count > 0 && names.Length > 0 && !names.Any(namedBefore.Contains);
        bool isNew = newName || (path.Length > 0 && !besideLesion);
        Add(
            FindingKind.NewLesionLevel,
            isNew ? FindingSeverity.Red : FindingSeverity.Amber,
            e,
            t,
            finding => finding with { ComparedWith = grid.Examinations[previous].Date, Lesion = newName ? names[0] : null }
        );
    }

    private void OfGrades(int e, int t, int before, TrackStep step)
    {
        if (e != Latest)
        {
            return;
        }

        Place earlier = grid.Step(before, t)!.Place;
        bool scaleChanged =
            IsOtherScale(earlier.Echogenicity, step.Place.Echogenicity) || IsOtherScale(earlier.FibreAlignment, step.Place.FibreAlignment);
        if (scaleChanged)
        {
            Add(
                FindingKind.ScaleChanged,
                FindingSeverity.Amber,
                e,
                t,
                finding => finding with { ComparedWith = grid.Examinations[before].Date }
            );
            return;
        }

        if (
            earlier.FibreAlignment is { } was
            && step.Place.FibreAlignment is { } isNow
            && isNow.Value > was.Value
            && isNow.Scale == GradeScales.FibreAlignment0To3
        )
        {
            Add(
                FindingKind.FibreAlignmentWorse,
                FindingSeverity.Note,
                e,
                t,
                finding =>
                    finding with
                    {
                        ComparedWith = grid.Examinations[before].Date,
                        Probability = GradeComparison.Of(was.Value, isNow.Value).Worse,
                    }
            );
        }

        int? echogenicity = step.Place.Echogenicity?.Value - earlier.Echogenicity?.Value;
        int? fibre = step.Place.FibreAlignment?.Value - earlier.FibreAlignment?.Value;
        LesionCell then = lesions.Cell(before, t);
        LesionCell now = lesions.Cell(e, t);
        bool areaChanged = then.IsKnown && now.IsKnown && Math.Abs(now.Area - then.Area) > DetectableArea(e, t, before);
        if (echogenicity is not (null or 0) && fibre is null or 0 && !areaChanged)
        {
            Add(
                FindingKind.EchogenicityOnly,
                FindingSeverity.Note,
                e,
                t,
                finding => finding with { ComparedWith = grid.Examinations[before].Date, Count = echogenicity }
            );
        }
    }

    private void OfNotCompared()
    {
        for (int e = 0; e < grid.Examinations.Count; e++)
        {
            if (!grid.IsCompared(e))
            {
                _findings.Add(
                    new Finding
                    {
                        Kind =
                            !grid.IsApart(e) ? FindingKind.StanceDiffers
                            : grid.Examinations[e].Zones != grid.Zones ? FindingKind.LevelsToldOtherwise
                            : FindingKind.LandmarkNotMeasured,
                        Severity = e == grid.Examinations.Count - 1 ? FindingSeverity.Amber : FindingSeverity.Note,
                        ExaminationId = grid.Examinations[e].Id,
                        Date = grid.Examinations[e].Date,
                        IsEarlier = e != grid.Examinations.Count - 1,
                    }
                );
            }
        }
    }

    private void OfLinks()
    {
        // An unsure link in any examination that decides bears on the verdict of today.
        int[] deciding = [.. trend.TakeLast(Math.Max(3, settings.WindowExaminations))];
        for (int t = 0; t < grid.Tracks.Count; t++)
        {
            bool onLesion = lesions.HasLesionEver(t);
            foreach (int e in Enumerable.Range(0, grid.Examinations.Count))
            {
                if (grid.Step(e, t) is { Uncertain: true } step)
                {
                    Add(
                        FindingKind.UncertainLink,
                        onLesion ? FindingSeverity.Amber : FindingSeverity.Note,
                        e,
                        t,
                        finding =>
                            finding with
                            {
                                IsEarlier = e != Latest && !(onLesion && deciding.Contains(e)),
                                Probability = step.LinkProbability,
                                OtherLevels = [.. step.Alternatives.Select(other => other.ConsensusLevel)],
                            }
                    );
                }
            }
        }
    }

    // Shifts are told against the others: when the first examination is the odd one, the others must not all be blamed.
    private void OfShifts()
    {
        Dictionary<string, ExaminationShift> shifts = links.Shifts.ToDictionary(shift => shift.ExaminationId, StringComparer.Ordinal);
        int[] known = [.. Enumerable.Range(0, grid.Examinations.Count).Where(e => shifts.ContainsKey(grid.Examinations[e].Id))];
        // Zones have no tape that could be held wrongly: what is shifted there is no length.
        if (known.Length < 2 || grid.Zones is not null)
        {
            return;
        }

        foreach (int e in known)
        {
            if (known.Length == 2 && e == known[0])
            {
                continue;
            }

            ExaminationShift own = shifts[grid.Examinations[e].Id];
            ExaminationShift[] others = [.. known.Where(other => other != e).Select(other => shifts[grid.Examinations[other].Id])];
            double shift = own.Shift.Value - Median(others.Select(other => other.Shift.Value));
            double spread =
                own.StandardDeviation.Value > 0 ? own.StandardDeviation.Value : Median(others.Select(o => o.StandardDeviation.Value));
            if (Math.Abs(shift) >= settings.TapeShiftCm - Rounding && Math.Abs(shift) > settings.TapeShiftZ * spread)
            {
                _findings.Add(
                    new Finding
                    {
                        Kind = FindingKind.TapeShift,
                        Severity = FindingSeverity.Note,
                        ExaminationId = grid.Examinations[e].Id,
                        Date = grid.Examinations[e].Date,
                        Length = new Centimetres(shift),
                        IsEarlier = e != Latest,
                    }
                );
            }
        }
    }

    private void OfMeasurers()
    {
        HashSet<string>? before = null;
        int unnamed = 0;
        foreach (int e in grid.Compared)
        {
            Examination examination = grid.Examinations[e];
            HashSet<string> now = CaseGrid.MeasurersOf(examination.Readings);
            if (now.Count == 0)
            {
                unnamed++;
                continue;
            }

            if (before is not null && !before.Overlaps(now))
            {
                _findings.Add(
                    new Finding
                    {
                        Kind = FindingKind.MeasurerChanged,
                        Severity = FindingSeverity.Note,
                        ExaminationId = examination.Id,
                        Date = examination.Date,
                        Persons = [First(before), First(now)],
                        IsEarlier = e != Latest,
                    }
                );
            }

            before = now;
        }

        if (unnamed > 0)
        {
            _findings.Add(
                new Finding
                {
                    Kind = FindingKind.MeasurerNotGiven,
                    Severity = FindingSeverity.Note,
                    Count = unnamed,
                }
            );
        }
    }

    private void OfStart()
    {
        if (grid.Course.Onset is not { } onset)
        {
            _findings.Add(new Finding { Kind = FindingKind.OnsetUnknown, Severity = FindingSeverity.Note });
            if (grid.Course.Reinjury is null)
            {
                return;
            }
        }
        else if (
            grid.Compared.Select(e => grid.Examinations[e]).FirstOrDefault(examination => examination.Date >= onset) is { } baseline
            && baseline.Date.DayNumber - onset.DayNumber <= settings.ProvisionalBaselineDays
        )
        {
            _findings.Add(
                new Finding
                {
                    Kind = FindingKind.ProvisionalBaseline,
                    Severity = FindingSeverity.Note,
                    ExaminationId = baseline.Id,
                    Date = baseline.Date,
                    ComparedWith = onset,
                    Count = baseline.Date.DayNumber - onset.DayNumber,
                }
            );
        }

        int beforeInjury = grid.Compared.Count(e => grid.Examinations[e].Date < grid.Course.Onset);
        if (beforeInjury > 0)
        {
            _findings.Add(
                new Finding
                {
                    Kind = FindingKind.BeforeInjury,
                    Severity = FindingSeverity.Note,
                    Count = beforeInjury,
                    Date = grid.Course.Onset,
                }
            );
        }

        int leftOut = grid.Compared.Count - trend.Count - beforeInjury;
        if (leftOut > 0)
        {
            _findings.Add(
                new Finding
                {
                    Kind = FindingKind.AcutePhaseLeftOut,
                    Severity = FindingSeverity.Note,
                    Count = leftOut,
                    Date = grid.Course.Reinjury > grid.Course.Onset ? grid.Course.Reinjury : grid.Course.Onset ?? grid.Course.Reinjury,
                }
            );
        }
    }

    private void OfLatest()
    {
        int e = Latest;
        foreach (int track in lesions.MissedAt(e))
        {
            // An uncertain link has its own finding.
            if (lesions.IsUnread(e, track) && !lesions.Cell(e, track).IsDiffuse)
            {
                Add(
                    FindingKind.LesionLevelMissed,
                    FindingSeverity.Amber,
                    e,
                    track,
                    finding =>
                        finding with
                        {
                            Level = grid.Step(LastReadBefore(e, track) ?? e, track)?.Place.Level,
                            ComparedWith = LastReadBefore(e, track) is { } last ? grid.Examinations[last].Date : null,
                        }
                );
            }
        }

        ExaminationBurden burden = burdens[e];
        void Tell(FindingKind kind, int? count = null) =>
            _findings.Add(
                new Finding
                {
                    Kind = kind,
                    Severity = FindingSeverity.Note,
                    ExaminationId = burden.ExaminationId,
                    Date = burden.Date,
                    Count = count,
                }
            );
        if (burden.VolumeIsLowerBound)
        {
            Tell(FindingKind.VolumeLowerBound);
        }

        if (!burden.LevelsComplete)
        {
            Tell(FindingKind.LevelsIncomplete);
        }

        if (grid.Zones is not null && grid.Course.ZoneLength is null && burden.WorstLevel is not null)
        {
            Tell(FindingKind.ZoneLengthNotMeasured);
        }

        int levels = grid.PlacesAt(e).Count;
        if (levels < 3)
        {
            Tell(FindingKind.TooFewLevels, levels);
        }
    }

    private void Add(FindingKind kind, FindingSeverity severity, int e, int t, Func<Finding, Finding>? more = null)
    {
        Finding finding = new()
        {
            Kind = kind,
            Severity = severity,
            ExaminationId = grid.Examinations[e].Id,
            Date = grid.Examinations[e].Date,
            Part = grid.Step(e, t)?.Place.Part ?? grid.Tracks[t].Part,
            Level = grid.Step(e, t)?.Place.Level,
            TrackId = grid.Tracks[t].Id,
            IsEarlier = e != Latest,
        };
        _findings.Add(more is null ? finding : more(finding));
    }

    // A comparison over an uncertain link says so; null when both ends are sure.
    private double? UncertainProbability(int track, int before, TrackStep step)
    {
        TrackStep earlier = grid.Step(before, track)!;
        double? lower = earlier.Uncertain ? earlier.LinkProbability : null;
        double? own = step.Uncertain ? step.LinkProbability : null;
        return lower is { } one && own is { } other ? Math.Min(one, other) : lower ?? own;
    }

    private int? LastReadBefore(int examination, int track)
    {
        for (int i = grid.Compared.Count - 1; i >= 0; i--)
        {
            if (grid.Compared[i] < examination && grid.Step(grid.Compared[i], track) is not null)
            {
                return grid.Compared[i];
            }
        }

        return null;
    }

    private static IEnumerable<string> LesionNamesOf(Examination examination) => LesionNamesOf(examination.Readings);

    private static IEnumerable<string> LesionNamesOf(IEnumerable<Reading> readings) =>
        readings.Select(reading => reading.Lesion).OfType<string>().Distinct(StringComparer.Ordinal);

    private static bool IsOtherScale(Grade? one, Grade? other) => one is not null && other is not null && one.Scale != other.Scale;

    private static string First(HashSet<string> names) => names.Order(StringComparer.Ordinal).First();

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        int middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }
}
