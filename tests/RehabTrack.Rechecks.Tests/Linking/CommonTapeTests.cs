using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Linking;

/// <summary>Fixed points anchor a tape; tapes of different landmarks meet only through a distance measured on that horse.</summary>
public sealed class CommonTapeTests
{
    private static CaseCourse Course(params Examination[] examinations) =>
        new()
        {
            Id = "case",
            Limb = Limb.LeftHind,
            Landmark = Landmark.PointOfHock,
            Examinations = examinations,
        };

    private static LinkedCourse Linked(CaseCourse course) => LevelLinker.Link(course, [], new LinkingSettings());

    private static LandmarkDistance Hock(double toJoint) =>
        new(Landmark.PointOfHock, Landmark.TarsometatarsalJoint, new Centimetres(toJoint));

    private static Examination WithPoints(Examination examination, double shift) =>
        examination with
        {
            FixedPoints =
            [
                new FixedPoint(FixedPointKind.Origin, new Centimetres(8 + shift)),
                new FixedPoint(FixedPointKind.Division, new Centimetres(24 + shift)),
                new FixedPoint(FixedPointKind.MedialInsertion, new Centimetres(30 + shift)),
                new FixedPoint(FixedPointKind.LateralInsertion, new Centimetres(30.5 + shift)),
            ],
        };

    // The second tape reads 1.4 cm too large and only two places were read: by position alone 13.4 lies nearer to 14 than to 12.
    private static readonly Examination First = Tapes.Exam(1, 10, 12, 14, 16);
    private static readonly Examination Second = Tapes.Exam(2, 13.4, 15.4);

    [Fact]
    public void Fixed_points_hold_a_tape_where_levels_alone_are_misread()
    {
        LinkedCourse without = Linked(Course(First, Second));
        LinkedCourse with = Linked(Course(WithPoints(First, 0), WithPoints(Second, 1.4)));

        Assert.Equal(without.TrackOf(Tapes.Key(1, 14)), without.TrackOf(Tapes.Key(2, 13.4)));
        Assert.Equal(with.TrackOf(Tapes.Key(1, 12)), with.TrackOf(Tapes.Key(2, 13.4)));
        Assert.Equal(with.TrackOf(Tapes.Key(1, 14)), with.TrackOf(Tapes.Key(2, 15.4)));
        Assert.InRange(with.Shifts[1].Shift.Value, 1.1, 1.5);
        Assert.True(with.Shifts[1].StandardDeviation < without.Shifts[1].StandardDeviation);
    }

    [Fact]
    public void A_fixed_point_seen_only_once_changes_nothing()
    {
        LinkedCourse without = Linked(Course(First, Second));
        LinkedCourse with = Linked(Course(WithPoints(First, 0), Second));

        Assert.Equal(without.Written(), with.Written());
    }

    [Fact]
    public void A_measured_distance_brings_tapes_of_two_landmarks_together()
    {
        // The joint lies 6.5 cm distal to the point of hock: what reads 12 from the hock reads 5.5 from the joint.
        Examination joint = Tapes.Exam(2, 3.5, 5.5, 7.5, 9.5) with
        {
            Landmark = Landmark.TarsometatarsalJoint,
        };
        LinkedCourse linked = Linked(Course(First, joint) with { LandmarkDistances = [Hock(6.5)] });

        Assert.Empty(linked.Apart);
        foreach ((double hock, double fromJoint) in ((double, double)[])[(10, 3.5), (12, 5.5), (14, 7.5), (16, 9.5)])
        {
            Assert.Equal(linked.TrackOf(Tapes.Key(1, hock)), linked.TrackOf(Tapes.Key(2, fromJoint)));
        }

        Assert.Equal(6.5, linked.Shifts[1].LandmarkOffset.Value);
        Assert.Equal(0, linked.Shifts[1].Shift.Value, 6);
    }

    [Fact]
    public void Without_a_distance_such_a_tape_stands_apart_and_is_compared_with_none()
    {
        Examination joint = Tapes.Of(3, Tapes.Row(3, Part.Body, 10, 2.0, 0.9), Tapes.Row(3, Part.Body, 12, 2.0, 0.9)) with
        {
            Landmark = Landmark.TarsometatarsalJoint,
        };
        CaseCourse course = Course(
            Tapes.Of(1, Tapes.Row(1, Part.Body, 10, 1.2, 0), Tapes.Row(1, Part.Body, 12, 1.3, 0.2)),
            Tapes.Of(2, Tapes.Row(2, Part.Body, 10, 1.2, 0), Tapes.Row(2, Part.Body, 12, 1.3, 0.2)),
            joint
        );

        CaseAnalysis analysis = CaseAnalyser.Analyse(course, [], new AnalysisSettings(), joint.Date);

        Assert.Equal(["e3"], analysis.Links.Apart);
        Assert.Equal(2, analysis.Trend.Series.Count);
        Assert.Equal(3, analysis.Burdens.Count);
        Assert.DoesNotContain(
            analysis.Findings,
            finding =>
                finding.Kind
                    is FindingKind.NewlyAbnormalLevel
                        or FindingKind.NewLesionLevel
                        or FindingKind.LigamentAreaRise
                        or FindingKind.LesionLevelMissed
        );
        Assert.Equal("e3", Assert.Single(analysis.Findings, finding => finding.Kind == FindingKind.LandmarkNotMeasured).ExaminationId);
        analysis.Links.AssertSound([course.Examinations[0], course.Examinations[1], joint], ["e3"]);
    }

    [Fact]
    public void Tapes_that_stand_apart_come_by_date_and_id_and_leave_the_others_as_they_are()
    {
        Examination Joint(string id) =>
            Tapes.Of(2, Tapes.Row(2, Part.Body, 12), Tapes.Row(2, Part.MedialBranch, 20)) with
            {
                Id = id,
                Landmark = Landmark.TarsometatarsalJoint,
            };
        Examination first = Tapes.Of(1, [.. Tapes.Exam(1, 10, 14, 18).Readings, Tapes.Row(1, Part.MedialBranch, 24)]);
        Examination third = Tapes.Of(3, [.. Tapes.Exam(3, 11, 15, 19).Readings, Tapes.Row(3, Part.MedialBranch, 25)]);
        LinkedCourse alone = Linked(Course(first, third));
        LinkedCourse linked = Linked(Course(Joint("b"), third, Joint("a"), first));

        Assert.Equal(["a", "b"], linked.Apart);
        Assert.Equal(["e1", "a", "b", "e3"], linked.Shifts.Select(shift => shift.ExaminationId));
        Assert.Equal(alone.Shifts[1], linked.Shifts[3]);
        Assert.NotEqual(0, linked.Shifts[3].Shift.Value);
        Assert.Equal(linked.Tracks.OrderBy(track => track.Path), linked.Tracks);
        Assert.All(
            linked.Tracks.Where(track => linked.Apart.Contains(track.Steps[0].ExaminationId)),
            track => Assert.False(Assert.Single(track.Steps).Uncertain)
        );
    }

    [Fact]
    public void Distances_add_up_along_the_limb_and_a_direct_one_goes_first()
    {
        LandmarkDistance onwards = new(Landmark.TarsometatarsalJoint, Landmark.AccessoryCarpalBone, new Centimetres(2));
        LandmarkDistance direct = new(Landmark.PointOfHock, Landmark.AccessoryCarpalBone, new Centimetres(9));
        CaseCourse course = Course(Tapes.Exam(1, 10), Tapes.Exam(2, 10) with { Landmark = Landmark.AccessoryCarpalBone }) with
        {
            LandmarkDistances = [Hock(6.5), onwards],
        };

        Assert.Equal(8.5, CommonTape.OffsetsOf(course)["e2"]!.Value.Value);
        Assert.Equal(9, CommonTape.OffsetsOf(course with { LandmarkDistances = [Hock(6.5), onwards, direct] })["e2"]!.Value.Value);
    }

    // Counted from the joint, which lies further down, everything reads 6.5 cm less.
    [Fact]
    public void A_tape_from_above_reads_less_when_counted_from_below()
    {
        Examination Joint(int number) => Tapes.Exam(number, 10, 12) with { Landmark = Landmark.TarsometatarsalJoint };
        CaseCourse course = Course(Tapes.Exam(1, 10, 12), Joint(2)) with
        {
            Landmark = Landmark.TarsometatarsalJoint,
            LandmarkDistances = [Hock(6.5)],
        };
        course = course with { Examinations = [course.Examinations[0] with { Landmark = Landmark.PointOfHock }, course.Examinations[1]] };

        Assert.Equal(-6.5, CommonTape.OffsetsOf(course)["e1"]!.Value.Value);
        Assert.Equal(0, CommonTape.OffsetsOf(course)["e2"]!.Value.Value);
    }

    // The landmark of the case itself was used by none; of two used once each the earlier examination's stands, of one day that of the
    // first id.
    [Fact]
    public void Of_landmarks_used_as_often_the_first_examinations_is_the_common_one()
    {
        Examination Joint(int number, string id) => Tapes.Exam(number, 10, 12) with { Id = id, Landmark = Landmark.TarsometatarsalJoint };
        Examination Carpal(int number, string id) => Tapes.Exam(number, 10, 12) with { Id = id, Landmark = Landmark.AccessoryCarpalBone };

        Assert.Equal(["b"], Linked(Course(Carpal(2, "b"), Joint(1, "a"))).Apart);
        Assert.Equal(["b"], Linked(Course(Joint(2, "b"), Carpal(1, "a"))).Apart);
        Assert.Equal(["b"], Linked(Course(Carpal(1, "b"), Joint(1, "a"))).Apart);
    }

    [Fact]
    public void The_landmark_of_most_examinations_is_the_common_one()
    {
        Examination Joint(int number) => Tapes.Exam(number, 10, 12) with { Landmark = Landmark.TarsometatarsalJoint };

        Assert.Equal(["e1"], Linked(Course(Tapes.Exam(1, 10, 12), Joint(2), Joint(3))).Apart);
        Assert.Equal(["e2"], Linked(Course(Tapes.Exam(1, 10, 12), Joint(2))).Apart);
    }
}
