using RehabTrack.Exchange.Rows;
using RehabTrack.Exchange.Writing;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Exchange.Tests.Cases;

/// <summary>The other limb and the fixed points of the ligament, from a file and back into one.</summary>
public sealed class OtherLimbAndFixedPointsTests
{
    private const string Head =
        "case,part,examination_date,level_cm,ligament_area_cm2,other_limb,other_limb_ligament_area_cm2,other_limb_thickness_cm,";

    private static SheetResult Read(params string[] rows) =>
        SheetText.Read(Head + "origin_cm,division_cm,medial_insertion_cm,lateral_insertion_cm\n" + string.Join('\n', rows) + "\n");

    [Fact]
    public void They_are_read_once_an_examination_and_written_back()
    {
        SheetResult result = Read(
            "C1,body,2026-01-10,18,1.5,Sound,1.2,0.9,8,24.5,31,",
            "C1,body,2026-01-10,20,1.4,,,,,,,30.5",
            "C1,body,2026-03-10,18,1.4,,,,,,,"
        );

        CaseFile file = Assert.Single(result.Cases);
        Assert.Empty(result.Rejected);
        Assert.Equal(OtherLimb.Sound, file.Course.OtherLimb);
        Assert.Equal(
            [
                (FixedPointKind.Origin, 8.0),
                (FixedPointKind.Division, 24.5),
                (FixedPointKind.MedialInsertion, 31.0),
                (FixedPointKind.LateralInsertion, 30.5),
            ],
            file.Course.Examinations[0].FixedPoints.Select(point => (point.Kind, point.Level.Value))
        );
        Assert.Empty(file.Course.Examinations[1].FixedPoints);
        Reading first = file.Course.Examinations[0].Readings[0];
        Assert.Equal((1.2, 0.9), (first.OtherLimbLigamentArea!.Value.Value, first.OtherLimbThickness!.Value.Value));

        using MemoryStream written = new();
        CaseFileWriter.Write(written, [file], SheetStyle.Semicolon);
        CaseFile again = Assert.Single(SheetText.ReadBytes(written.ToArray()).Cases);

        Assert.Equal(OtherLimb.Sound, again.Course.OtherLimb);
        Assert.Equal(file.Course.Examinations[0].FixedPoints, again.Course.Examinations[0].FixedPoints);
        Assert.Equal(first.OtherLimbThickness, again.Course.Examinations[0].Readings[0].OtherLimbThickness);
    }

    [Theory]
    [InlineData("C1,body,2026-01-10,18,1.5,healthy,,,,,,", "other_limb", "unknown-word")]
    [InlineData("C1,body,2026-01-10,18,1.5,,0,,,,,", "other_limb_ligament_area_cm2", "area-zero")]
    [InlineData("C1,body,2026-01-10,18,1.5,,,7,,,,", "other_limb_thickness_cm", "length-too-large")]
    [InlineData("C1,body,2026-01-10,18,1.5,,,,61,,,", "origin_cm", "level-out-of-range")]
    [InlineData("C1,body,2026-01-10,18,1.5,,,,24,20,,", "division_cm", "fixed-point-order")]
    [InlineData("C1,body,2026-01-10,18,,sound,1.2,0.9,,,,", "ligament_area_cm2", "no-measurement")]
    public void What_is_wrong_is_named_by_its_column(string row, string column, string code)
    {
        RejectedRow rejected = Assert.Single(Read(row).Rejected);

        Assert.Equal((column, code), (rejected.Column, rejected.Problem.Code));
    }

    [Fact]
    public void One_examination_has_one_origin()
    {
        SheetResult result = Read(
            "C1,body,2026-01-10,18,1.5,,,,8,,,",
            "C1,body,2026-01-10,20,1.5,,,,8,,,",
            "C1,body,2026-01-10,22,1.5,,,,9,,,"
        );

        Assert.Equal("fixed-point-differs", Assert.Single(result.Rejected).Problem.Code);
    }
}
