using RehabTrack.Exchange.Rows;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Tests.Rows;

public sealed class RowRulesTests
{
    [Theory]
    [InlineData("case", "", "missing")]
    [InlineData("part", "", "missing")]
    [InlineData("part", "elbow", "unknown-word")]
    [InlineData("limb", "XH", "unknown-word")]
    [InlineData("structure", "bone", "unknown-word")]
    [InlineData("landmark", "stifle", "unknown-word")]
    [InlineData("stance", "lying", "unknown-word")]
    [InlineData("role", "best", "unknown-word")]
    [InlineData("plane", "oblique", "unknown-word")]
    [InlineData("echogenicity_scale", "0-9", "unknown-word")]
    [InlineData("fibre_alignment_scale", "0-4", "unknown-word")]
    [InlineData("level_cm", "", "missing")]
    [InlineData("level_cm", "-0.5", "level-out-of-range")]
    [InlineData("level_cm", "60.1", "level-out-of-range")]
    [InlineData("level_cm", "about 20", "not-a-number")]
    [InlineData("level_cm", "20 cm", "not-a-number")]
    [InlineData("ligament_area_cm2", "-1", "area-negative")]
    [InlineData("ligament_area_cm2", "0", "area-zero")]
    [InlineData("ligament_area_cm2", "20.01", "area-too-large")]
    [InlineData("ligament_area_cm2", "150", "area-too-large")]
    [InlineData("ligament_area_cm2", "1.234,5", "ambiguous-number")]
    [InlineData("ligament_area_cm2", "1,234.5", "ambiguous-number")]
    [InlineData("ligament_area_cm2", "NaN", "not-a-number")]
    [InlineData("ligament_area_cm2", "1e999", "not-a-number")]
    [InlineData("lesion_area_cm2", "1.51", "lesion-larger-than-ligament")]
    [InlineData("lesion_area_cm2", "-0.1", "area-negative")]
    [InlineData("lesion_area_cm2", "none", "not-a-number")]
    [InlineData("thickness_cm", "5.1", "length-too-large")]
    [InlineData("thickness_cm", "0", "length-zero")]
    [InlineData("thickness_cm", "-0.9", "length-negative")]
    [InlineData("width_cm", "8.5", "length-too-large")]
    [InlineData("lesion_percent", "100.5", "percent-out-of-range")]
    [InlineData("lesion_percent", "-1", "percent-out-of-range")]
    [InlineData("echogenicity_grade", "4", "grade-outside-scale")]
    [InlineData("echogenicity_grade", "-1", "grade-outside-scale")]
    [InlineData("echogenicity_grade", "1.5", "grade-not-whole")]
    [InlineData("fibre_alignment_grade", "4", "grade-outside-scale")]
    [InlineData("examination_date", "", "missing")]
    [InlineData("examination_date", "10.01.2026", "date-not-iso")]
    [InlineData("examination_date", "2026-02-30", "date-not-iso")]
    [InlineData("examination_date", "2026-06-02", "date-in-future")]
    [InlineData("examination_date", "1026-01-10", "date-too-early")]
    [InlineData("onset_date", "2026-06-02", "date-in-future")]
    [InlineData("onset_date", "yesterday", "date-not-iso")]
    [InlineData("birth_date", "2026-01-11", "date-before-birth")]
    [InlineData("birth_date", "2026-06-02", "date-in-future")]
    [InlineData("repeat", "again", "repeat-not-a-number")]
    [InlineData("repeat", "0", "repeat-not-a-number")]
    [InlineData("repeat", "1.5", "repeat-not-a-number")]
    [InlineData("repeat", "100", "repeat-not-a-number")]
    [InlineData("microchip", "9.41E+14", "microchip-rounded")]
    [InlineData("microchip", "941#1", "microchip-letters")]
    public void A_wrong_cell_is_named_with_line_column_and_value(string column, string value, string code)
    {
        SheetResult result = SheetText.ReadRow((column, value));

        RejectedRow rejected = result.Rejected[0];
        Assert.Contains(result.Rejected, row => row.Problem.Code == code);
        Assert.Equal((2, code == "date-before-birth" ? "examination_date" : column), (rejected.Row, rejected.Column));
        Assert.Equal(code == "date-before-birth" ? "2026-01-10" : value, rejected.Value);
        Assert.Empty(result.Cases);
        Assert.Equal(1, result.RejectedRows);
    }

    [Theory]
    [InlineData("level_cm", "0")]
    [InlineData("level_cm", "60")]
    [InlineData("level_cm", "20,5")]
    [InlineData("ligament_area_cm2", "20")]
    [InlineData("ligament_area_cm2", ".9")]
    [InlineData("ligament_area_cm2", "1.234")]
    [InlineData("ligament_area_cm2", "1.5E+00")]
    [InlineData("lesion_area_cm2", "1.5")]
    [InlineData("lesion_area_cm2", "0")]
    [InlineData("lesion_area_cm2", "Diffuse")]
    [InlineData("thickness_cm", "5")]
    [InlineData("lesion_percent", "100")]
    [InlineData("lesion_percent", "30 %")]
    [InlineData("echogenicity_grade", "3")]
    [InlineData("echogenicity_grade", "2.0")]
    [InlineData("limb", "lh")]
    [InlineData("structure", "Suspensory ligament")]
    [InlineData("part", "MEDIAL_BRANCH")]
    [InlineData("landmark", "point of hock")]
    [InlineData("stance", "non weight-bearing")]
    [InlineData("role", "normal above")]
    [InlineData("plane", "Long Axis")]
    [InlineData("echogenicity_scale", "0–4")]
    [InlineData("examination_date", "2026-06-01")]
    [InlineData("examination_date", "2026-01-10T00:00:00")]
    [InlineData("onset_date", "2026-01-10")]
    [InlineData("birth_date", "2026-01-10")]
    [InlineData("microchip", "999 000 000 000 042")]
    public void What_lies_on_the_border_or_is_written_another_way_is_taken(string column, string value)
    {
        SheetResult result = SheetText.ReadRow((column, value));

        Assert.Empty(result.Rejected);
        Assert.Single(result.Readings());
    }

    [Fact]
    public void All_problems_of_a_row_are_told_at_once()
    {
        SheetResult result = SheetText.ReadRow(
            ("level_cm", "99"),
            ("ligament_area_cm2", "-1"),
            ("limb", "XX"),
            ("examination_date", "soon")
        );

        Assert.Equal(
            ["examination_date", "level_cm", "ligament_area_cm2", "limb"],
            result.Rejected.Select(row => row.Column).Order(StringComparer.Ordinal)
        );
        Assert.Equal(1, result.RejectedRows);
    }

    [Fact]
    public void Blank_cells_mean_what_the_documentation_says()
    {
        SheetResult unknown = SheetText.ReadRow(("echogenicity_grade", "2"));
        SheetResult hind = SheetText.ReadRow(("limb", "RH"));
        CaseCourse course = unknown.Cases[0].Course;
        Reading reading = unknown.Readings()[0];

        Assert.Equal((Limb.Unknown, Structure.Unknown, null), (course.Limb, course.Structure, course.Landmark));
        Assert.Equal(Landmark.PointOfHock, hind.Cases[0].Course.Landmark);
        Assert.Equal(Stance.WeightBearing, course.Examinations[0].Stance);
        Assert.Equal(ExaminationState.History, course.Examinations[0].State);
        Assert.Equal(new Grade(GradeScales.Echogenicity0To3, 2), reading.Echogenicity);
        Assert.Equal((ImagePlane.ShortAxis, ReadingRole.None), (reading.Plane, reading.Role));
        Assert.Equal(LesionArea.Unknown, reading.LesionArea);
        Assert.Null(reading.Thickness);
    }

    [Theory]
    [InlineData("0", LesionAreaKind.Measured)]
    [InlineData("", LesionAreaKind.Unknown)]
    [InlineData("diffuse", LesionAreaKind.Diffuse)]
    public void No_lesion_unknown_and_diffuse_stay_three_things(string cell, LesionAreaKind kind) =>
        Assert.Equal(kind, SheetText.ReadRow(("lesion_area_cm2", cell)).Readings()[0].LesionArea.Kind);

    [Theory]
    [InlineData("30", "0.45", true)]
    [InlineData("33", "0.45", true)]
    [InlineData("34", "0.45", false)]
    [InlineData("26", "0.45", false)]
    [InlineData("10", "0", false)]
    [InlineData("40", "diffuse", true)]
    public void A_share_that_contradicts_the_areas_is_an_error_beyond_rounding(string percent, string area, bool taken) =>
        Assert.Equal(
            taken,
            !SheetText
                .ReadRow(("lesion_percent", percent), ("lesion_area_cm2", area))
                .Rejected.Any(row => row.Problem.Code == "percent-contradicts-areas")
        );

    [Fact]
    public void A_row_without_any_measurement_is_an_error() =>
        Assert.Equal(
            "no-measurement",
            Assert.Single(SheetText.ReadRow(("ligament_area_cm2", ""), ("note", "not seen")).Rejected).Problem.Code
        );

    [Fact]
    public void An_unquoted_decimal_comma_between_commas_is_recognised_by_the_cell_too_many()
    {
        SheetResult result = SheetText.Read("case,part,examination_date,level_cm,ligament_area_cm2\nC1,body,2026-01-10,20,1,5\n");

        Assert.Equal("more-cells-than-headings", Assert.Single(result.Rejected).Problem.Code);
    }

    [Theory]
    [InlineData("20,1.25,0,40,", "0,40")]
    [InlineData("20,1,25,0.40,", "1,25")]
    public void An_unquoted_decimal_comma_is_recognised_where_only_an_empty_cell_is_too_many(string rest, string shown)
    {
        SheetResult result = SheetText.Read(
            $"case,part,examination_date,level_cm,ligament_area_cm2,lesion_area_cm2,note\nC1,body,2026-01-10,{rest}\n"
        );

        Assert.Empty(result.Cases);
        Assert.Equal(shown, result.Rejected.Single(row => row.Problem.Code == "more-cells-than-headings").Value);
    }

    [Fact]
    public void A_row_that_is_filled_up_with_empty_cells_is_taken()
    {
        SheetResult result = SheetText.Read(
            "case,part,examination_date,level_cm,ligament_area_cm2,lesion_area_cm2,note\nC1,body,2026-01-10,20,1.25,0,,,\n"
        );

        Assert.Empty(result.Rejected);
        Assert.Single(result.Cases);
    }

    [Fact]
    public void A_normal_level_with_lesion_is_taken_with_a_caution()
    {
        SheetResult result = SheetText.ReadRow(("role", "normal-above"), ("lesion_area_cm2", "0.2"));

        Assert.Empty(result.Rejected);
        Assert.Equal("normal-with-lesion", Assert.Single(result.Cautions).Problem.Code);
    }

    [Fact]
    public void Without_a_date_of_today_nothing_is_said_of_the_future()
    {
        using MemoryStream stream = new(
            System.Text.Encoding.UTF8.GetBytes(SheetText.Small.Replace("2026-03-10", "2126-03-10", StringComparison.Ordinal))
        );

        Assert.Empty(SheetImport.Read(stream, today: null).Rejected);
    }
}
