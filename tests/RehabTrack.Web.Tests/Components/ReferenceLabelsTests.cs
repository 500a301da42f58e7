using RehabTrack.Exchange.Rows;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Web.Components.Reference;
using RehabTrack.Web.Features.Import;

namespace RehabTrack.Web.Tests.Components;

public sealed class ReferenceLabelsTests
{
    [Theory]
    [InlineData("trend")]
    [InlineData("linking")]
    [InlineData("measurement-error")]
    [InlineData("schedule")]
    public void Every_threshold_that_a_page_shows_has_plain_words(string table)
    {
        string[] without = [.. ReferenceTable.Load(table).Rows.Select(row => row.Name).Where(row => !ReferenceLabels.Has(table, row))];
        Assert.Empty(without);
    }

    [Fact]
    public void Every_column_of_the_import_sheet_has_a_name()
    {
        string[] without = [.. SheetColumns.All.Where(column => !ColumnNames.Has(column))];
        Assert.Empty(without);
    }

    [Theory]
    [InlineData(0.7, "cm", "0.7\u00a0cm")]
    [InlineData(0.02, "cm2", "0.02\u00a0cm²")]
    [InlineData(28, "d", "28\u00a0days")]
    [InlineData(-0.15, "1", "\u22120.15")]
    public void A_value_stands_with_its_unit(double value, string unit, string shown) =>
        Assert.Equal(shown, ReferenceLabels.Value(new ReferenceValue("x", value, unit, "")));

    [Theory]
    [InlineData("readings[Body 12.5].ligament_area_cm2", "Body 12.5: ligament area")]
    [InlineData("stance", "stance")]
    public void A_field_that_differs_is_named_in_plain_words(string field, string shown) => Assert.Equal(shown, ColumnNames.OfField(field));
}
