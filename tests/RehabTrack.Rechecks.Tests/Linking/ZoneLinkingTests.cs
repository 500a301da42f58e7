using System.Globalization;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Linking;

/// <summary>Zones work as ordered levels with their scheme; no length and no volume without a length measured on the horse.</summary>
public sealed class ZoneLinkingTests
{
    private const ZoneScheme Nine = ZoneScheme.HindNine;
    private static readonly double[] Lesions = [0, 0, 0.10, 0.45, 0.30, 0.05, 0, 0, 0];

    private static Level LevelOf(string zone, ZoneScheme scheme = Nine) => new(ZoneSchemes.Find(scheme, zone)!.Value);

    private static Reading Row(int number, Level level, double ligament, double? lesion, Part part = Part.Body) =>
        Tapes.Row(number, part, 0, ligament, lesion) with
        {
            Id = $"e{number}@{level}/{part}",
            Level = level,
        };

    private static Examination ByZones(int number, params IEnumerable<Reading> readings) =>
        Tapes.Of(number, [.. readings]) with
        {
            Zones = Nine,
        };

    /// <summary>The zones with these ordinals, a lesion that is so large in the middle.</summary>
    private static Examination Read(int number, double size, params IEnumerable<int> ordinals) =>
        ByZones(number, ordinals.Select(i => Row(number, new Level(new Zone(Nine, i)), 1.2, size * Lesions[i])));

    private static CaseCourse Course(params IReadOnlyList<Examination> examinations) =>
        new()
        {
            Id = "case",
            Limb = Limb.LeftHind,
            Landmark = Landmark.PointOfHock,
            Onset = new DateOnly(2023, 12, 1),
            Examinations = examinations,
        };

    private static CaseAnalysis Analysed(CaseCourse course) =>
        CaseAnalyser.Analyse(course, [], new AnalysisSettings(), course.Examinations.Max(examination => examination.Date));

    private static IEnumerable<string?> ZonesOf(Track track) => track.Steps.Select(step => step.Place.Level.Zone?.Name);

    [Fact]
    public void A_missed_zone_shifts_no_other_and_a_branch_keeps_its_own_path()
    {
        Examination first = ByZones(
            1,
            Row(1, LevelOf("2A"), 1.2, 0),
            Row(1, LevelOf("2B"), 1.3, 0.2),
            Row(1, LevelOf("3A"), 1.3, 0.1),
            Row(1, LevelOf("3B"), 1.2, 0),
            Row(1, LevelOf("3B"), 0.6, 0.1, Part.MedialBranch)
        );
        Examination second = ByZones(
            2,
            Row(2, LevelOf("2A"), 1.2, 0),
            Row(2, LevelOf("3A"), 1.3, 0.1),
            Row(2, LevelOf("3B"), 1.2, 0),
            Row(2, LevelOf("3B"), 0.6, 0.1, Part.MedialBranch)
        );

        LinkedCourse linked = LevelLinker.Link(Course(first, second), [], new LinkingSettings());

        Assert.Equal(5, linked.Tracks.Count);
        Assert.All(linked.Tracks, track => Assert.Single(ZonesOf(track).Distinct()));
        Assert.Equal(["2A", "2B", "3A", "3B", "3B"], linked.Tracks.Select(track => track.ConsensusLevel.Zone?.Name));
        Assert.Equal(LinkPath.MedialBranch, linked.Tracks[^1].Path);
        Assert.Single(linked.Tracks[1].Steps);
        Assert.DoesNotContain(linked.Tracks.SelectMany(track => track.Steps), step => step.Uncertain);
    }

    // All ways to leave out zones of a second examination but one of nine: 510 courses, each linked by name alone in our heads.
    [Fact]
    public void Whatever_zones_are_missed_a_zone_is_linked_with_none_but_itself()
    {
        List<string> wrong = [];
        for (int left = 1; left < 511; left++)
        {
            int[] kept = [.. Enumerable.Range(0, 9).Where(i => (left >> i & 1) == 1)];
            LinkedCourse linked = LevelLinker.Link(
                Course(Read(1, 1, Enumerable.Range(0, 9)), Read(2, 0.8, kept), Read(3, 0.6, Enumerable.Range(0, 9))),
                [],
                new LinkingSettings()
            );
            wrong.AddRange(linked.Tracks.Where(track => ZonesOf(track).Distinct().Count() > 1).Select(track => $"{left}: {track.Id}"));
            if (linked.Tracks.Count != 9)
            {
                wrong.Add(string.Create(CultureInfo.InvariantCulture, $"{left}: {linked.Tracks.Count} tracks"));
            }
        }

        Assert.Empty(wrong);
    }

    [Fact]
    public void Without_a_zone_length_there_is_no_length_and_no_volume_and_the_area_speaks()
    {
        CaseAnalysis analysis = Analysed(
            Course([.. Enumerable.Range(0, 5).Select(i => Read(i + 1, Math.Pow(0.7, i), Enumerable.Range(0, 9)))])
        );

        Assert.All(analysis.Burdens, burden => Assert.Equal((null, null), (burden.Volume, burden.LesionLength)));
        Assert.Equal(Measure.LesionArea, analysis.Trend.Measure);
        Assert.Equal(Verdict.Healing, analysis.Trend.Verdict);
        Assert.Equal(0.45, analysis.Trend.Series[0].Value, 12);
        Assert.Equal(37.5, analysis.Burdens[0].WorstPercent!.Value.Value, 12);
        Assert.Equal("2B", analysis.Burdens[0].WorstLevel!.Value.Zone!.Value.Name);
        Assert.Equal(100 * 0.9 / 10.8, analysis.Burdens[0].TotalPercent!.Value.Value, 12);
        Assert.True(analysis.Burdens[0].LevelsComplete);
        Assert.Single(analysis.Findings, finding => finding.Kind == FindingKind.ZoneLengthNotMeasured);
    }

    [Theory]
    [InlineData(4.0)]
    [InlineData(3.8)]
    [InlineData(4.4)]
    public void With_a_zone_length_length_and_volume_are_those_of_a_tape_at_those_positions(double zoneLength)
    {
        Examination[] zones =
        [
            Read(1, 1, Enumerable.Range(0, 9)),
            Read(2, 0.8, [0, 1, 2, 3, 5, 6, 7]),
            Read(3, 0.6, Enumerable.Range(1, 7)),
        ];
        Examination[] tape =
        [
            .. zones.Select(examination =>
                examination with
                {
                    Zones = null,
                    Readings =
                    [
                        .. examination.Readings.Select(reading =>
                            reading with
                            {
                                Level = new Centimetres(zoneLength * reading.Level.Zone!.Value.Ordinal),
                            }
                        ),
                    ],
                }
            ),
        ];

        CaseAnalysis byZones = Analysed(Course(zones) with { ZoneLength = new Centimetres(zoneLength) });
        CaseAnalysis byTape = Analysed(Course(tape));

        Assert.Equal(Measure.LesionVolume, byZones.Trend.Measure);
        Assert.DoesNotContain(byZones.Findings, finding => finding.Kind == FindingKind.ZoneLengthNotMeasured);
        // 2A to 3B with half a zone on either side, and the trapezoid of lesions that fall to none on both sides.
        Assert.Equal(5 * zoneLength - zoneLength, byZones.Burdens[0].LesionLength!.Value.Value, 12);
        Assert.Equal(0.9 * zoneLength, byZones.Burdens[0].Volume!.Value.Value, 12);
        Assert.All(
            byZones.Burdens.Zip(byTape.Burdens),
            pair =>
            {
                Assert.Equal(pair.Second.Volume!.Value.Value, pair.First.Volume!.Value.Value, 12);
                Assert.Equal(pair.Second.LesionLength!.Value.Value, pair.First.LesionLength!.Value.Value, 12);
            }
        );
    }

    [Fact]
    public void Zones_and_a_tape_stand_apart_and_so_do_two_schemes()
    {
        Examination tape = Tapes.Of(3, Tapes.Row(3, Part.Body, 8, 2.4, 0.9), Tapes.Row(3, Part.Body, 12, 2.4, 0.9));
        Examination seven = Tapes.Of(4, Row(4, LevelOf("2A", ZoneScheme.HindSeven), 2.4, 0.9)) with { Zones = ZoneScheme.HindSeven };
        CaseCourse course = Course(Read(1, 1, Enumerable.Range(0, 9)), Read(2, 0.8, Enumerable.Range(0, 9)), tape, seven) with
        {
            // Not even a measured distance between the landmarks makes zones of one scheme those of another.
            LandmarkDistances = [new LandmarkDistance(Landmark.PointOfHock, Landmark.TarsometatarsalJoint, new Centimetres(6))],
        };

        CaseAnalysis analysis = Analysed(course);

        Assert.Equal(["e3", "e4"], analysis.Links.Apart);
        Assert.Equal(
            ["e3", "e4"],
            analysis
                .Findings.Where(finding => finding.Kind == FindingKind.LevelsToldOtherwise)
                .Select(finding => finding.ExaminationId)
                .Order(StringComparer.Ordinal)
        );
        Assert.Equal(2, analysis.Trend.Series.Count);
        Assert.Equal(4, analysis.Burdens.Count);
        Assert.Equal(8, analysis.Links.TrackOf(Tapes.Key(3, 8)).ConsensusLevel.OnTape?.Value);
        analysis.Links.AssertSound(course.Examinations, ["e3", "e4"]);
    }

    [Fact]
    public void The_fingerprint_tells_a_zone_from_a_tape_and_one_zone_length_from_another()
    {
        CaseCourse zones = Course(Read(1, 1, [0, 1, 2]));
        Examination first = zones.Examinations[0];
        // The positions of the computation, given as if they were a tape: the levels alone do not tell them apart.
        Examination tape = first with
        {
            Zones = null,
            Readings = [.. first.Readings.Select(reading => reading with { Level = reading.Level.Position })],
        };

        Assert.NotEqual(InputHash.OfExamination(first), InputHash.OfExamination(tape));
        Assert.NotEqual(InputHash.OfCase(zones), InputHash.OfCase(zones with { ZoneLength = new Centimetres(4) }));
        Assert.NotEqual(
            InputHash.OfCase(zones with { ZoneLength = new Centimetres(4.1) }),
            InputHash.OfCase(zones with { ZoneLength = new Centimetres(4) })
        );
    }

    [Fact]
    public void No_shift_of_a_tape_is_told_of_zones_and_pins_name_zones()
    {
        CaseCourse course = Course(Read(1, 1, [2, 3, 4]), Read(2, 1, [3, 4, 5]), Read(3, 1, [2, 3, 4]));
        PlaceKey one = new("e1", LinkPath.Axial, LevelOf("2A"));
        PlaceKey other = new("e2", LinkPath.Axial, LevelOf("2B"));

        CaseAnalysis analysis = CaseAnalyser.Analyse(course, [Tapes.Pin(one, other)], new AnalysisSettings(), course.Examinations[2].Date);

        Assert.Equal(analysis.Links.TrackOf(one), analysis.Links.TrackOf(other));
        Assert.DoesNotContain(analysis.Findings, finding => finding.Kind == FindingKind.TapeShift);
    }
}
