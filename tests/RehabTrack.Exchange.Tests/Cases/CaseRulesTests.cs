using System.Text.Json;
using CsCheck;
using RehabTrack.Exchange.Rows;
using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Exchange.Tests.Cases;

public sealed class CaseRulesTests
{
    private const string Headings =
        "case;horse;limb;structure;landmark;onset_date;examination_date;examination;stance;examiner;transducer;part;level_cm;lesion;measurer;repeat;ligament_area_cm2;lesion_area_cm2;echogenicity_scale;echogenicity_grade;birth_date;microchip";

    [Theory]
    [InlineData("horse", "Alder", "Birch", "case-disagrees")]
    [InlineData("limb", "LH", "RH", "case-disagrees")]
    [InlineData("structure", "sdft", "ddft", "case-disagrees")]
    [InlineData("onset_date", "2025-12-01", "2025-12-02", "case-disagrees")]
    [InlineData("birth_date", "2015-12-01", "2016-12-02", "case-disagrees")]
    [InlineData("microchip", "999000000000042", "999000000000043", "case-disagrees")]
    [InlineData("landmark", "point-of-hock", "tarsometatarsal-joint", "landmarks-mixed")]
    public void Rows_of_a_case_that_disagree_are_errors_and_most_rows_say_what_the_case_has(
        string column,
        string most,
        string other,
        string code
    )
    {
        SheetResult result = Read(
            Row(("level_cm", "20"), (column, other)),
            Row(("level_cm", "22"), (column, most)),
            Row(("level_cm", "24"), (column, most))
        );

        RejectedRow rejected = Assert.Single(result.Rejected);
        Assert.Equal((2, column, other, code), (rejected.Row, rejected.Column, rejected.Value, rejected.Problem.Code));
        Assert.Equal([other, most], rejected.Problem.Arguments);
        Assert.Equal(2, result.Readings().Count);
    }

    [Fact]
    public void Of_values_stated_equally_often_the_one_of_the_earliest_examination_stands()
    {
        SheetResult result = Read(
            Row(("horse", "Alder"), ("examination_date", "2026-03-10")),
            Row(("horse", "Birch"), ("examination_date", "2026-01-10"))
        );

        Assert.Equal("Birch", Assert.Single(result.Cases).Horse.Name);
        Assert.Equal(2, Assert.Single(result.Rejected).Row);
    }

    [Fact]
    public void A_blank_cell_does_not_disagree_and_spelling_is_no_disagreement()
    {
        SheetResult result = Read(
            Row(("level_cm", "20"), ("horse", "Old Alder")),
            Row(("level_cm", "22"), ("horse", "")),
            Row(("level_cm", "24"), ("horse", "old alder"))
        );

        Assert.Empty(result.Rejected);
        Assert.Equal("Old Alder", result.Cases[0].Horse.Name);
    }

    [Fact]
    public void A_blank_landmark_is_the_usual_one_of_the_limb_and_mixes_with_no_other()
    {
        SheetResult result = Read(
            Row(("level_cm", "20"), ("limb", "LH"), ("landmark", "")),
            Row(("level_cm", "22"), ("limb", "LH"), ("landmark", "point of hock")),
            Row(("level_cm", "24"), ("limb", "LH"), ("landmark", "tarsometatarsal joint"))
        );

        Assert.Equal("landmarks-mixed", Assert.Single(result.Rejected).Problem.Code);
        Assert.Equal(Landmark.PointOfHock, result.Cases[0].Course.Landmark);
    }

    [Fact]
    public void A_landmark_of_the_other_end_of_the_horse_is_a_caution()
    {
        SheetResult result = Read(Row(("limb", "LH"), ("landmark", "accessory-carpal-bone")));

        Assert.Empty(result.Rejected);
        Assert.Equal("landmark-not-of-limb", Assert.Single(result.Cautions).Problem.Code);
    }

    [Fact]
    public void A_scale_changed_within_a_case_is_an_error_where_a_grade_stands_on_it()
    {
        SheetResult result = Read(
            Row(("level_cm", "20"), ("echogenicity_grade", "2")),
            Row(("level_cm", "22"), ("echogenicity_scale", "0-4"), ("echogenicity_grade", "2"), ("examination_date", "2026-03-10")),
            Row(("level_cm", "24"), ("echogenicity_scale", "0-4"), ("examination_date", "2026-03-10"))
        );

        RejectedRow rejected = Assert.Single(result.Rejected);
        Assert.Equal((3, "echogenicity_scale", "scale-changed"), (rejected.Row, rejected.Column, rejected.Problem.Code));
    }

    [Theory]
    [InlineData("stance", "weight-bearing", "non-weight-bearing", "stance-differs")]
    [InlineData("stance", "", "non-weight-bearing", "stance-differs")]
    [InlineData("examiner", "Ann", "Ben", "examiner-differs")]
    [InlineData("transducer", "linear", "convex", "transducer-differs")]
    public void Readings_of_one_examination_share_stance_examiner_and_transducer(string column, string most, string other, string code)
    {
        SheetResult result = Read(
            Row(("level_cm", "20"), (column, most)),
            Row(("level_cm", "22"), (column, most)),
            Row(("level_cm", "24"), (column, other)),
            Row(("level_cm", "24"), (column, other), ("examination_date", "2026-03-10"))
        );

        RejectedRow rejected = Assert.Single(result.Rejected);
        Assert.Equal((4, code), (rejected.Row, rejected.Problem.Code));
        Assert.Equal(2, result.Cases[0].Course.Examinations.Count);
    }

    [Fact]
    public void A_reading_that_stands_twice_is_an_error_on_the_lower_row_that_names_the_upper()
    {
        SheetResult result = Read(Row(("measurer", "AB")), Row(("level_cm", "22")), Row(("measurer", "a b"), ("ligament_area_cm2", "1.4")));

        RejectedRow rejected = Assert.Single(result.Rejected);
        Assert.Equal((4, "reading-twice"), (rejected.Row, rejected.Problem.Code));
        Assert.Equal(["2"], rejected.Problem.Arguments);
    }

    [Theory]
    [InlineData("part", "origin")]
    [InlineData("level_cm", "20.1")]
    [InlineData("lesion", "B")]
    [InlineData("measurer", "B")]
    [InlineData("repeat", "2")]
    [InlineData("examination_date", "2026-01-11")]
    [InlineData("case", "Other")]
    public void Readings_that_differ_in_one_part_of_the_key_both_stay(string column, string value)
    {
        SheetResult result = Read(Row(), Row((column, value)));

        Assert.Empty(result.Rejected);
        Assert.Equal(2, result.Readings().Count);
    }

    [Fact]
    public void Examinations_of_one_date_are_told_apart_by_name()
    {
        SheetResult result = Read(
            Row(("examination", "morning")),
            Row(("examination", "evening")),
            Row(("examination", "Evening"), ("level_cm", "22"))
        );

        Assert.Empty(result.Rejected);
        Assert.Equal(
            ["2026-01-10 evening", "2026-01-10 morning"],
            result.Cases[0].Course.Examinations.Select(one => one.Id.ToLowerInvariant())
        );
        Assert.Equal(2, result.Cases[0].Course.Examinations[0].Readings.Count);
    }

    [Fact]
    public void A_row_without_a_name_belongs_to_the_one_named_examination_of_its_date_and_to_none_of_two()
    {
        SheetResult one = Read(Row(("examination", "morning")), Row(("level_cm", "22")));
        SheetResult two = Read(Row(("examination", "morning")), Row(("examination", "evening")), Row(("level_cm", "22")));

        Assert.Single(one.Cases[0].Course.Examinations);
        Assert.Empty(one.Rejected);
        Assert.Equal((4, "examination-unclear"), (Assert.Single(two.Rejected).Row, two.Rejected[0].Problem.Code));
    }

    [Fact]
    public void Lesions_that_share_a_ligament_cannot_be_larger_than_it_together()
    {
        SheetResult result = Read(Row(("lesion", "A"), ("lesion_area_cm2", "0.9")), Row(("lesion", "B"), ("lesion_area_cm2", "0.7")));

        Assert.Equal([2, 3], result.Rejected.Select(row => row.Row));
        Assert.All(result.Rejected, row => Assert.Equal("lesions-larger-than-ligament", row.Problem.Code));
        Assert.Empty(Read(Row(("lesion", "A"), ("lesion_area_cm2", "0.9")), Row(("lesion", "B"), ("lesion_area_cm2", "0.6"))).Rejected);
    }

    [Fact]
    public void An_examination_before_birth_is_an_error_also_when_another_row_says_the_birth()
    {
        SheetResult result = Read(Row(("examination_date", "2014-01-10")), Row(("birth_date", "2015-01-01")));

        Assert.Equal((2, "date-before-birth"), (Assert.Single(result.Rejected).Row, result.Rejected[0].Problem.Code));
    }

    [Fact]
    public void An_examination_before_the_onset_is_a_caution()
    {
        SheetResult result = Read(Row(("onset_date", "2026-01-20")));

        Assert.Empty(result.Rejected);
        Assert.Equal("examination-before-onset", Assert.Single(result.Cautions).Problem.Code);
    }

    [Fact]
    public void Names_of_lesions_and_measurers_get_one_spelling()
    {
        SheetResult result = Read(Row(("lesion", "Core")), Row(("lesion", "core"), ("level_cm", "22")));

        Assert.Equal(["Core", "Core"], result.Readings().Select(reading => reading.Lesion));
    }

    [Fact]
    public void Rows_of_a_case_may_be_scattered_and_their_order_changes_nothing()
    {
        string[] rows =
        [
            Row(("case", "B"), ("level_cm", "20"), ("horse", "Alder"), ("echogenicity_grade", "2")),
            Row(("case", "B"), ("level_cm", "22"), ("horse", "Birch")),
            Row(("case", "B"), ("level_cm", "24"), ("horse", "alder"), ("examination", "x")),
            Row(("case", "A"), ("level_cm", "20"), ("stance", "non-weight-bearing"), ("lesion", "Core")),
            Row(("case", "A"), ("level_cm", "22"), ("lesion", "core")),
            Row(("case", "B"), ("level_cm", "22"), ("examination_date", "2026-03-10"), ("limb", "LH")),
            Row(("case", "B"), ("level_cm", "24"), ("examination_date", "2026-03-10"), ("limb", "RH")),
            Row(
                ("case", "A"),
                ("level_cm", "22"),
                ("examination_date", "2026-03-10"),
                ("echogenicity_scale", "0-4"),
                ("echogenicity_grade", "4")
            ),
        ];
        string expected = Comparable(Read(rows));

        Gen.Shuffle(rows)
            .Sample(shuffled => Assert.Equal(expected, Comparable(Read(shuffled))), seed: "0000000000000", iter: 200, threads: 1);
    }

    private static string Row(params (string Column, string Value)[] cells)
    {
        Dictionary<string, string> row = Headings.Split(';').ToDictionary(column => column, _ => "", StringComparer.Ordinal);
        row["case"] = "C1";
        row["part"] = "body";
        row["examination_date"] = "2026-01-10";
        row["level_cm"] = "20";
        row["ligament_area_cm2"] = "1.5";
        foreach ((string column, string value) in cells)
        {
            row[column] = value;
        }

        return string.Join(';', row.Values);
    }

    private static SheetResult Read(params string[] rows) => SheetText.ReadRows(Headings, rows);

    /// <summary>What a result says without the line numbers.</summary>
    private static string Comparable(SheetResult result) =>
        JsonSerializer.Serialize(
            new
            {
                Cases = result.Cases.Select(file => new
                {
                    file.Label,
                    file.Horse,
                    file.Course.Limb,
                    Examinations = file.Course.Examinations.Select(examination => new
                    {
                        examination.Id,
                        examination.Stance,
                        Readings = examination
                            .Readings.Select(reading => JsonSerializer.Serialize(reading with { Id = "" }))
                            .Order(StringComparer.Ordinal),
                    }),
                }),
                Rejected = result
                    .Rejected.Select(row => $"{row.Column} {row.Value} {row.Problem.Code} {string.Join(',', row.Problem.Arguments)}")
                    .Order(StringComparer.Ordinal),
            }
        );
}
