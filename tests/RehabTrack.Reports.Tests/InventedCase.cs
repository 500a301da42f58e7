using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Reports.Tests;

/// <summary>A case put together by hand, links and all, so that a drawing is tested without the engine.</summary>
internal sealed class InventedCase
{
    private readonly DateOnly[] _dates;
    private readonly double[] _shifts;
    private readonly List<(string Id, LinkPath Path, Part Part, double Consensus, List<Told> Steps)> _tracks = [];
    private readonly Dictionary<int, List<Reading>> _readings = [];
    private readonly Dictionary<int, List<string>> _missed = [];
    private int _next = 1;

    public InventedCase(params DateOnly[] dates)
    {
        _dates = dates;
        _shifts = new double[dates.Length];
    }

    public static InventedCase Healing(int examinations = 5)
    {
        double[] shifts = [0, 0.8, -0.3, 0.3, 0.1, -0.4, 0.5, 0.2, -0.6, 0.1, 0.4, -0.2];
        InventedCase invented = new([
            .. Enumerable.Range(0, examinations).Select(i => new DateOnly(2026, 1, 12).AddDays((58 * i) + (i % 2))),
        ]);
        for (int i = 0; i < examinations; i++)
        {
            invented._shifts[i] = shifts[i];
        }

        (double Level, double Ligament, double Share)[] places =
        [
            (20.2, 1.30, 0),
            (22.1, 1.40, 17),
            (24.0, 1.55, 36),
            (26.2, 1.46, 20),
            (28.1, 1.33, 0),
        ];
        for (int p = 0; p < places.Length; p++)
        {
            invented.Track($"axial-{p + 1}", Part.Body, places[p].Level);
            for (int i = 0; i < examinations; i++)
            {
                if (p == 2 && i == 2)
                {
                    invented.Missed(i, $"axial-{p + 1}");
                    continue;
                }

                double share = places[p].Share * Math.Max(Math.Exp(-0.2 * i), 0.55);
                double ligament = places[p].Ligament * (1 - (0.01 * i));
                bool unsure = p == 3 && i == 2;
                invented.Step(
                    i,
                    Math.Round(places[p].Level + shifts[i] + (((p * 7) + (i * 3)) % 5 * 0.05), 1),
                    reading =>
                        reading with
                        {
                            LigamentArea = new SquareCentimetres(Math.Round(ligament, 2)),
                            LesionArea = LesionArea.Measured(new SquareCentimetres(Math.Round(ligament * share / 100, 2))),
                            Echogenicity = new Grade(
                                GradeScales.Echogenicity0To3,
                                share > 25 ? 3
                                    : share > 5 ? 2
                                    : 0
                            ),
                            Measurer = "Una Field",
                            Role = p == 2 ? ReadingRole.Worst : ReadingRole.None,
                        },
                    unsure ? 0.62 : 0.93 + (0.01 * ((p + i) % 7)),
                    alternatives: unsure ? [new LinkAlternative("axial-3", new Centimetres(24), 0.38)] : []
                );
            }
        }

        return invented;
    }

    public Trend? Trend { get; set; }
    public DateOnly? Onset { get; set; }
    public ExaminationState LastState { get; set; } = ExaminationState.Signed;
    public Landmark? Landmark { get; set; } = Rechecks.Anatomy.Landmark.PointOfHock;

    public InventedCase Shifted(int examination, double centimetres)
    {
        _shifts[examination] = centimetres;
        return this;
    }

    public InventedCase Track(string id, Part part, double consensus)
    {
        _tracks.Add((id, AnatomyRules.PathOf(part), part, consensus, []));
        return this;
    }

    public InventedCase Step(
        int examination,
        double level,
        Func<Reading, Reading> values,
        double? probability = 0.98,
        LinkBasis basis = LinkBasis.Computed,
        IReadOnlyList<LinkAlternative>? alternatives = null
    )
    {
        (string _, LinkPath _, Part part, double _, List<Told> steps) = _tracks[^1];
        Reading reading = values(
            new Reading
            {
                Id = $"r{_next++}",
                Part = part,
                Level = new Centimetres(level),
            }
        );
        if (!_readings.TryGetValue(examination, out List<Reading>? readings))
        {
            _readings[examination] = readings = [];
        }

        readings.Add(reading);
        steps.Add(new Told(examination, level, probability, basis, alternatives ?? []));
        return this;
    }

    public InventedCase Missed(int examination, string track)
    {
        if (!_missed.TryGetValue(examination, out List<string>? tracks))
        {
            _missed[examination] = tracks = [];
        }

        tracks.Add(track);
        return this;
    }

    public (CaseCourse Course, CaseAnalysis Analysis) Build()
    {
        Examination[] examinations =
        [
            .. _dates.Select(
                (date, i) =>
                    new Examination
                    {
                        Id = IdOf(i),
                        Date = date,
                        State = i == _dates.Length - 1 ? LastState : ExaminationState.Signed,
                        Readings = _readings.GetValueOrDefault(i) ?? [],
                    }
            ),
        ];
        Dictionary<PlaceKey, Place> places = examinations.SelectMany(Places.Of).ToDictionary(place => place.Key);
        Track[] tracks =
        [
            .. _tracks
                .Where(track => track.Steps.Count > 0)
                .Select(track => new Track(
                    track.Id,
                    track.Path,
                    track.Part,
                    new Centimetres(track.Consensus),
                    [
                        .. track
                            .Steps.OrderBy(step => step.Examination)
                            .Select(
                                (step, i) =>
                                    new TrackStep
                                    {
                                        ExaminationId = IdOf(step.Examination),
                                        Date = _dates[step.Examination],
                                        Place = places[new PlaceKey(IdOf(step.Examination), track.Path, new Centimetres(step.Level))],
                                        LinkProbability = i == 0 ? null : step.Probability,
                                        Uncertain = i > 0 && step.Probability < 0.9,
                                        Basis = i == 0 ? LinkBasis.First : step.Basis,
                                        Alternatives = step.Alternatives,
                                    }
                            ),
                    ]
                )),
        ];
        CaseCourse course = new()
        {
            Id = "Invented",
            Limb = Limb.LeftHind,
            Structure = Structure.SuspensoryLigament,
            Landmark = Landmark,
            Onset = Onset,
            Examinations = examinations,
        };
        CaseAnalysis analysis = new()
        {
            EngineVersion = "test",
            Settings = new AnalysisSettings(),
            AsOf = _dates.Length == 0 ? new DateOnly(2026, 1, 1) : _dates[^1].AddDays(12),
            Links = new LinkedCourse(
                tracks,
                [.. _dates.Select((_, i) => new ExaminationShift(IdOf(i), new Centimetres(_shifts[i]), new Centimetres(i == 0 ? 0 : 0.2)))]
            ),
            Burdens = [.. _dates.Select((date, i) => Burden(i, date))],
            Parts = [],
            Trend = Trend ?? NoTrend,
            Lesions = [],
            Findings = [],
        };
        return (course, analysis);
    }

    public static string IdOf(int examination) => $"exam-{examination + 1}";

    public static Trend NoTrend { get; } =
        new()
        {
            Verdict = Verdict.NotYetReadable,
            Reason = VerdictReason.NoMeasure,
            Measure = null,
            Series = [],
            Window = null,
            Course = null,
            ChangePercent = null,
            DetectableRisePercent = null,
            DetectableFallPercent = null,
            MoreExaminationsToSettle = null,
            SlowestAcceptableLogPer60Days = -0.15,
            Projection = null,
            Since = null,
        };

    /// <summary>A volume trend over the dates, with an error of 15 % and the last three examinations deciding.</summary>
    public static Trend VolumeTrend(
        Verdict verdict,
        double slope,
        params (DateOnly Date, double Value, bool Complete, bool InTrend)[] points
    )
    {
        SeriesPoint[] series =
        [
            .. points.Select(
                (point, i) =>
                    new SeriesPoint
                    {
                        ExaminationId = IdOf(i),
                        Date = point.Date,
                        Value = point.Value,
                        Lower95 = point.Value * 0.84,
                        Upper95 = point.Value * 1.19,
                        Complete = point.Complete,
                        InTrend = point.InTrend,
                        InWindow = point.InTrend && i >= points.Length - 3,
                    }
            ),
        ];
        SeriesPoint[] window = [.. series.Where(point => point.InWindow)];
        return NoTrend with
        {
            Verdict = verdict,
            Reason = VerdictReason.Undecided,
            Measure = Measure.LesionVolume,
            Series = series,
            Window =
                window.Length < 2
                    ? null
                    : new SlopeFigures
                    {
                        LogPer60Days = slope,
                        StandardError = 0.06,
                        Lower95Log = slope - 0.13,
                        Upper95Log = slope + 0.13,
                        Examinations = window.Length,
                        From = window[0].Date,
                        To = window[^1].Date,
                    },
            Since = window.Length < 2 ? null : window[0].Date,
        };
    }

    private ExaminationBurden Burden(int examination, DateOnly date) =>
        new()
        {
            ExaminationId = IdOf(examination),
            Date = date,
            Volume = null,
            VolumeStandardError = null,
            VolumeIsLowerBound = false,
            TotalPercent = null,
            LevelsComplete = !_missed.ContainsKey(examination),
            Severity = null,
            WorstPercent = null,
            WorstLevel = null,
            LesionLength = null,
            EchogenicitySum = null,
            FibreAlignmentSum = null,
            LesionTracksMissed = _missed.GetValueOrDefault(examination) ?? [],
        };

    private sealed record Told(
        int Examination,
        double Level,
        double? Probability,
        LinkBasis Basis,
        IReadOnlyList<LinkAlternative> Alternatives
    );
}
