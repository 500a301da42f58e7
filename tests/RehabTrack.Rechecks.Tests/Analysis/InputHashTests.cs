using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Analysis;

/// <summary>The fingerprint changes with everything an analysis reads, and with nothing else.</summary>
public sealed class InputHashTests
{
    private static readonly AnalysisSettings Settings = new();

    private static readonly DateOnly AsOf = Start.AddDays(60);

    private static readonly CaseCourse Course = Case(
        Exam(0, Row(14, 1.2, 0.1), Row(18, 1.3, 0.4)) with
        {
            FixedPoints = [new(FixedPointKind.Origin, new Centimetres(8)), new(FixedPointKind.Division, new Centimetres(22))],
        },
        Exam(60, Row(14, 1.2, 0.05), Row(18, 1.3, 0.3))
    ) with
    {
        PlanPhases = [new(Start.AddDays(10), PlanPhase.Walk), new(Start.AddDays(40), PlanPhase.Trot)],
        LandmarkDistances =
        [
            new(Landmark.PointOfHock, Landmark.TarsometatarsalJoint, new Centimetres(9)),
            new(Landmark.TarsometatarsalJoint, Landmark.AccessoryCarpalBone, new Centimetres(3)),
        ],
    };

    private static readonly LinkConstraint Word = new(
        LinkConstraintKind.Pin,
        new PlaceKey(Course.Examinations[0].Id, LinkPath.Axial, new Centimetres(14)),
        new PlaceKey(Course.Examinations[1].Id, LinkPath.Axial, new Centimetres(14))
    );

    private static string Of(CaseCourse course, params LinkConstraint[] words) => InputHash.Of(course, words, Settings, AsOf);

    private static CaseCourse First(Func<Examination, Examination> change) =>
        Course with
        {
            Examinations = [change(Course.Examinations[0]), Course.Examinations[1]],
        };

    private static CaseCourse FirstReading(Func<Reading, Reading> change) =>
        First(examination => examination with { Readings = [change(examination.Readings[0]), examination.Readings[1]] });

    public static TheoryData<string> Changes => [.. All.Keys];

    private static Dictionary<string, CaseCourse> All { get; } =
        new()
        {
            ["limb"] = Course with { Limb = Limb.RightFore },
            ["onset"] = Course with { Onset = Start },
            ["target"] = Course with { TargetFraction = 0.2 },
            ["zone length"] = Course with { ZoneLength = new Centimetres(4) },
            ["another zone length"] = Course with { ZoneLength = new Centimetres(3.8) },
            ["a distance"] = Course with
            {
                LandmarkDistances =
                [
                    Course.LandmarkDistances[0],
                    new(Landmark.TarsometatarsalJoint, Landmark.AccessoryCarpalBone, new Centimetres(4)),
                ],
            },
            ["no distance"] = Course with { LandmarkDistances = [] },
            ["a phase"] = Course with { PlanPhases = [Course.PlanPhases[0], new(Start.AddDays(40), PlanPhase.CanterOrGallop)] },
            ["no phase"] = Course with { PlanPhases = [] },
            ["an examination left out"] = Course with { Examinations = [Course.Examinations[0]] },
            ["stance"] = First(examination => examination with { Stance = Stance.NonWeightBearing }),
            ["state"] = First(examination => examination with { State = ExaminationState.Outside }),
            ["a date"] = First(examination => examination with { Date = Start.AddDays(1) }),
            ["a fixed point"] = First(examination =>
                examination with
                {
                    FixedPoints = [examination.FixedPoints[0], new(FixedPointKind.Division, new Centimetres(23))],
                }
            ),
            ["no fixed point"] = First(examination => examination with { FixedPoints = [] }),
            ["a reading left out"] = First(examination => examination with { Readings = [examination.Readings[0]] }),
            ["a level"] = FirstReading(reading => reading with { Level = new Centimetres(14.5) }),
            ["an area"] = FirstReading(reading => reading with { LigamentArea = Cm2(1.21) }),
            ["a lesion"] = FirstReading(reading => reading with { LesionArea = LesionArea.Measured(Cm2(0.11)) }),
            ["a diffuse lesion"] = FirstReading(reading => reading with { LesionArea = LesionArea.Diffuse }),
            ["a grade"] = FirstReading(reading => reading with { FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, 1) }),
            ["another grade"] = FirstReading(reading => reading with { FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, 2) }),
            ["a measurer"] = FirstReading(reading => reading with { Measurer = "Bea" }),
            ["a role"] = FirstReading(reading => reading with { Role = ReadingRole.Worst }),
        };

    [Theory]
    [MemberData(nameof(Changes))]
    public void It_changes_with_what_is_read(string what)
    {
        string changed = Of(All[what]);

        Assert.NotEqual(Of(Course), changed);
        Assert.Equal(1, All.Values.Count(course => Of(course) == changed));
    }

    [Fact]
    public void It_changes_with_words_settings_and_the_day()
    {
        string[] hashes =
        [
            Of(Course),
            Of(Course, Word),
            Of(Course, Word with { Kind = LinkConstraintKind.Break }),
            Of(Course, Word with { Second = Word.Second with { Level = new Centimetres(18) } }),
            InputHash.Of(Course, [], Settings with { Trend = Settings.Trend with { HealingZ = 2 } }, AsOf),
            InputHash.Of(Course, [], Settings, AsOf.AddDays(1)),
            InputHash.Of(Course, [], Settings, AsOf.AddDays(-1)),
        ];

        Assert.Equal(hashes.Length, hashes.Distinct(StringComparer.Ordinal).Count());
        Assert.All(hashes, hash => Assert.Matches("^[0-9A-Fa-f]{64}$", hash));
    }

    [Fact]
    public void The_order_of_what_is_given_does_not_matter_and_what_lies_after_the_day_is_not_read()
    {
        CaseCourse turned = Course with
        {
            PlanPhases = [.. Course.PlanPhases.Reverse(), new(AsOf.AddDays(1), PlanPhase.CanterOrGallop)],
            LandmarkDistances = [.. Course.LandmarkDistances.Reverse()],
            Examinations =
            [
                Exam(61, Row(14, 1, 1)),
                .. Course
                    .Examinations.Reverse()
                    .Select(examination =>
                        examination with
                        {
                            Readings = [.. examination.Readings.Reverse()],
                            FixedPoints = [.. examination.FixedPoints.Reverse()],
                        }
                    ),
            ],
        };

        Assert.Equal(Of(Course), Of(turned));
    }

    [Fact]
    public void The_parts_have_fingerprints_of_their_own()
    {
        Assert.Equal(InputHash.OfCase(Course), InputHash.OfCase(Course with { Examinations = [], PlanPhases = [] }));
        Assert.NotEqual(InputHash.OfCase(Course), InputHash.OfCase(Course with { TargetFraction = 0.3 }));
        Assert.NotEqual(
            InputHash.OfExamination(Course.Examinations[0]),
            InputHash.OfExamination(First(examination => examination with { Stance = Stance.NonWeightBearing }).Examinations[0])
        );
    }

    [Fact]
    public void A_phase_counts_from_its_first_day()
    {
        PlanPhaseStart[] phases = [.. Course.PlanPhases, new(AsOf, PlanPhase.CanterOrGallop)];

        Assert.NotEqual(Of(Course), Of(Course with { PlanPhases = phases }));
        Assert.NotEqual(
            Of(Course with { PlanPhases = phases }),
            Of(Course with { PlanPhases = [.. Course.PlanPhases, phases[^1] with { Phase = PlanPhase.Trot }] })
        );
    }

    [Fact]
    public void Phases_and_distances_that_share_a_day_or_a_landmark_have_no_order_either()
    {
        PlanPhaseStart[] phases = [new(Start, PlanPhase.Walk), new(Start, PlanPhase.Trot), new(Start, PlanPhase.CanterOrGallop)];
        LandmarkDistance[] distances =
        [
            new(Landmark.PointOfHock, Landmark.TarsometatarsalJoint, new Centimetres(9)),
            new(Landmark.PointOfHock, Landmark.AccessoryCarpalBone, new Centimetres(12)),
        ];
        CaseCourse course = Course with { PlanPhases = phases, LandmarkDistances = distances };

        Assert.Equal(Of(course), Of(course with { PlanPhases = [.. phases.Reverse()], LandmarkDistances = [.. distances.Reverse()] }));
    }

    // Computed by this program and kept here as a record keeps them beside a signature. Another value of the first two would say of every
    // case that is signed already that it was changed since; another one of the third, while engine and settings are the same, that what
    // a decision rests on was. It has to change with the engine's version and with the list of the settings, and with nothing else.
    [Fact]
    public void What_a_record_keeps_is_found_again_by_every_later_build()
    {
        CaseCourse course = Course with
        {
            LandmarkDistances =
            [
                .. Course.LandmarkDistances,
                new(Landmark.TarsometatarsalJoint, Landmark.PointOfHock, new Centimetres(2.5)),
            ],
            PlanPhases = [.. Course.PlanPhases, new(Start.AddDays(40), PlanPhase.CanterOrGallop)],
            ZoneLength = new Centimetres(4),
            TargetFraction = 0.2,
        };
        Examination zoned = course.Examinations[0] with { Zones = ZoneScheme.ForeSeven };

        Assert.Equal("a4935581e9593b6fe744af3dd8a8c14ad2195d61a03b8ed755270783d6f5b6a8", InputHash.OfCase(course));
        Assert.Equal("fb1c462243e348a0a5bfcac3fc987f2daf57c5e8e777894751af1335b44523ca", InputHash.OfExamination(zoned));
        Assert.Equal("24da921875cc2ce1953c8ad099a89b15b309b0be91d1d05bdb4487c2f791b18a", Of(course, Word));
    }

    [Fact]
    public void Nothing_is_no_input()
    {
        Assert.Throws<ArgumentNullException>("course", () => InputHash.Of(null!, [], Settings, AsOf));
        Assert.Throws<ArgumentNullException>("constraints", () => InputHash.Of(Course, null!, Settings, AsOf));
        Assert.Throws<ArgumentNullException>("settings", () => InputHash.Of(Course, [], null!, AsOf));
        Assert.Throws<ArgumentNullException>("course", () => InputHash.OfCase(null!));
        Assert.Throws<ArgumentNullException>("examination", () => InputHash.OfExamination(null!));
    }
}
