using RehabTrack.Exchange.Mapping;
using RehabTrack.Exchange.Rows;
using RehabTrack.Exchange.Sheets;

namespace RehabTrack.Exchange.Tests.Mapping;

public sealed class MappingTests
{
    private const string Foreign =
        "Pferd;Fall;Untersuchungsdatum;Höhe (cm);CSA mm²;Läsionsfläche [mm2];Dicke mm;Box\n"
        + "Buche;B1;10.03.2026;20,5;150;45;9,5;3\n"
        + "Buche;B1;25.05.2026;20,0;145,5;30;9,4;3\n";

    private const string Grouped =
        "Horse;Level;12 Jan 2026 ligament;12 Jan 2026 lesion;10 Mar 2026 ligament;10 Mar 2026 lesion;Comment\n"
        + "Alder;20;1.2;0;1.3;0;upper end\n"
        + "Alder;22;1.5;0.4;;;\n"
        + "Alder;24;1.3;2.4;1.2;0.1;\n";

    [Fact]
    public void A_foreign_sheet_is_guessed_with_its_units_and_its_order_of_dates()
    {
        MappingSuggestion guess = MappingSuggestion.For(ShapeOf(Foreign));

        Assert.Equal(
            [
                new MappedColumn(0, "horse"),
                new MappedColumn(1, "case"),
                new MappedColumn(2, "examination_date"),
                new MappedColumn(3, "level_cm"),
                new MappedColumn(4, "ligament_area_cm2", MappedUnit.Millimetre),
                new MappedColumn(5, "lesion_area_cm2", MappedUnit.Millimetre),
                new MappedColumn(6, "thickness_cm", MappedUnit.Millimetre),
            ],
            guess.Mapping.Columns
        );
        Assert.Equal(DateOrder.DayMonthYear, guess.Mapping.DateOrder);
        Assert.Empty(guess.Questions);
    }

    [Fact]
    public void What_the_guess_lacks_is_named_and_a_value_for_all_rows_fills_it()
    {
        SheetMapping guess = MappingSuggestion.For(ShapeOf(Foreign)).Mapping;

        SheetResult lacking = Read(Foreign, guess);
        SheetResult filled = Read(Foreign, With(guess, ("part", "body"), ("limb", "LH")));

        Assert.True(lacking.NeedsMapping);
        Assert.Equal(("part", "mapping-missing"), (lacking.MappingProblems[0].Field, Assert.Single(lacking.MappingProblems).Code));
        Assert.Empty(filled.Rejected);
        Assert.Equal([1.5, 1.455], filled.Readings().Select(reading => reading.LigamentArea!.Value.Value));
        Assert.Equal([0.45, 0.3], filled.Readings().Select(reading => reading.LesionArea.MeasuredArea!.Value.Value));
        Assert.Equal([0.95, 0.94], filled.Readings().Select(reading => reading.Thickness!.Value.Value));
        Assert.Equal(
            [new DateOnly(2026, 3, 10), new DateOnly(2026, 5, 25)],
            filled.Cases[0].Course.Examinations.Select(examination => examination.Date)
        );
    }

    [Fact]
    public void A_sheet_with_a_group_of_columns_an_examination_is_seen_and_turned_into_rows()
    {
        MappingSuggestion guess = MappingSuggestion.For(ShapeOf(Grouped));
        SheetResult result = Read(Grouped, With(guess.Mapping, ("part", "body"), ("case", "Alder LH")));

        Assert.Equal(["12 Jan 2026", "10 Mar 2026"], guess.Mapping.Groups.Select(group => group.Date));
        Assert.Equal(["ligament_area_cm2", "lesion_area_cm2"], guess.Mapping.Groups[0].Columns.Select(column => column.Column));
        Assert.Equal([2, 2, 3, 4], result.Readings().Select(reading => result.RowOfReading[reading.Id]));
        Assert.Equal(
            [("2026-01-12", 2), ("2026-03-10", 2)],
            result.Cases[0].Course.Examinations.Select(examination => (examination.Id, examination.Readings.Count))
        );
        RejectedRow rejected = Assert.Single(result.Rejected);
        Assert.Equal(
            (4, "12 Jan 2026 lesion", "2.4", "lesion-larger-than-ligament"),
            (rejected.Row, rejected.Column, rejected.Value, rejected.Problem.Code)
        );
    }

    [Fact]
    public void A_wrong_cell_that_all_groups_share_is_told_once()
    {
        SheetMapping mapping = With(MappingSuggestion.For(ShapeOf(Grouped)).Mapping, ("part", "body"), ("case", "Alder LH"));

        SheetResult result = Read(Grouped.Replace("Alder;20;", "Alder;200;", StringComparison.Ordinal), mapping);

        Assert.Single(result.Rejected, rejected => rejected.Row == 2);
    }

    [Theory]
    [InlineData("03/04/2026", "05/06/2026", DateOrder.DayMonthYear, true)]
    [InlineData("03/04/2026", "25/06/2026", DateOrder.DayMonthYear, false)]
    [InlineData("03/04/2026", "06/25/2026", DateOrder.MonthDayYear, false)]
    [InlineData("2026-04-03", "2026-06-25", DateOrder.Iso, false)]
    [InlineData("3. 4. 2026", "25. 6. 2026", DateOrder.DayMonthYear, false)]
    [InlineData("12 January 2026", "3 Mar 2026", DateOrder.DayMonthYear, false)]
    public void The_order_of_dates_is_read_off_the_samples_and_asked_for_where_they_leave_it_open(
        string first,
        string second,
        DateOrder order,
        bool asked
    )
    {
        MappingSuggestion guess = MappingSuggestion.For(ShapeOf($"Case;Date;Level;CSA\nC1;{first};20;1.2\nC1;{second};20;1.2\n"));

        Assert.Equal(order, guess.Mapping.DateOrder);
        Assert.Equal(asked, guess.Questions.Any(question => question.Code == "date-order-unclear"));
    }

    [Theory]
    [InlineData("03/04/2026", DateOrder.DayMonthYear, "2026-04-03")]
    [InlineData("03/04/2026", DateOrder.MonthDayYear, "2026-03-04")]
    [InlineData("3.4.26", DateOrder.DayMonthYear, "2026-04-03")]
    [InlineData("Mar 4, 2026", DateOrder.MonthDayYear, "2026-03-04")]
    [InlineData("2026-04-03", DateOrder.MonthDayYear, "2026-04-03")]
    [InlineData("2026-04-03T00:00", DateOrder.Iso, "2026-04-03")]
    [InlineData("2026-04-03 00:00:00", DateOrder.Iso, "2026-04-03")]
    [InlineData("2026-04-03T10:30", DateOrder.Iso, null)]
    [InlineData("2026-4-3", DateOrder.Iso, null)]
    [InlineData("03.04.2026", DateOrder.Iso, null)]
    [InlineData("31.02.2026", DateOrder.DayMonthYear, null)]
    [InlineData("46115", DateOrder.DayMonthYear, null)]
    public void A_date_is_read_in_the_order_that_was_chosen_only(string text, DateOrder order, string? expected) =>
        Assert.Equal(expected, SheetDate.Read(text, order)?.ToString("yyyy-MM-dd", null));

    [Fact]
    public void A_number_in_mm_that_could_have_a_mark_between_thousands_is_refused()
    {
        SheetMapping mapping = With(MappingSuggestion.For(ShapeOf(Foreign)).Mapping, ("part", "body"));

        SheetResult result = Read(Foreign.Replace(";150;", ";1.150;", StringComparison.Ordinal), mapping);

        Assert.Equal("ambiguous-number", Assert.Single(result.Rejected).Problem.Code);
    }

    [Fact]
    public void A_mapping_is_remembered_as_text_under_the_fingerprint_of_the_headings()
    {
        SheetMapping mapping = With(MappingSuggestion.For(ShapeOf(Grouped)).Mapping, ("part", "body"));

        SheetMapping? remembered = SheetMapping.FromJson(mapping.ToJson());

        Assert.Equal(mapping.ToJson(), remembered?.ToJson());
        Assert.Equal(mapping.Groups[1].Columns, remembered!.Groups[1].Columns);
        Assert.Equal(ShapeOf(Grouped).Fingerprint, ShapeOf(Grouped.Replace("Horse;", "HORSE ;", StringComparison.Ordinal)).Fingerprint);
        Assert.NotEqual(ShapeOf(Grouped).Fingerprint, ShapeOf(Foreign).Fingerprint);
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{\"columns\":null}")]
    [InlineData("{\"columns\":[{\"index\":\"x\"}]}")]
    [InlineData("{\"something\":1}")]
    public void A_text_that_is_no_mapping_is_none(string json) => Assert.Null(SheetMapping.FromJson(json));

    [Fact]
    public void A_mapping_of_another_sheet_or_with_two_columns_of_one_meaning_is_refused()
    {
        SheetMapping guess = With(MappingSuggestion.For(ShapeOf(Foreign)).Mapping, ("part", "body"));

        Assert.Equal("mapping-not-of-sheet", Read("Date;Level\n1;2\n", guess).MappingProblems[0].Code);
        Assert.Equal(
            "mapping-meaning-twice",
            Read(Foreign, guess with { Columns = [.. guess.Columns, new MappedColumn(7, "level_cm")] }).MappingProblems.Single().Code
        );
        Assert.Equal(
            "mapping-column-twice",
            Read(Foreign, guess with { Columns = [.. guess.Columns, new MappedColumn(0, "note")] }).MappingProblems.Single().Code
        );
    }

    private static SheetShape ShapeOf(string text) => SheetText.Read(text).Shape!;

    private static SheetMapping With(SheetMapping mapping, params (string Column, string Value)[] constants) =>
        mapping with
        {
            Constants = constants.ToDictionary(pair => pair.Column, pair => pair.Value, StringComparer.Ordinal),
        };

    private static SheetResult Read(string text, SheetMapping mapping)
    {
        using MemoryStream stream = new(System.Text.Encoding.UTF8.GetBytes(text));
        return SheetImport.Read(stream, SheetText.Today, mapping);
    }
}
