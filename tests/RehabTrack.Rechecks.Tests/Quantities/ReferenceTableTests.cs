using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Quantities;

public sealed class ReferenceTableTests
{
    /// <summary>ECM 333 and Vet Times: the amber and the red line of the ligament area.</summary>
    [Fact]
    public void A_row_gives_its_value_with_unit_and_source()
    {
        ReferenceTable table = ReferenceTable.Load("trend");

        Assert.Equal(0.10, table["amberLigamentRise"]);
        Assert.Equal(0.20, table["redLigamentRise"]);
        Assert.All(table.Rows, row => Assert.False(string.IsNullOrWhiteSpace(row.Source)));
    }

    [Fact]
    public void A_row_or_table_that_is_not_there_names_itself()
    {
        InvalidOperationException noRow = Assert.Throws<InvalidOperationException>(() => ReferenceTable.Load("trend")["slope"]);
        InvalidOperationException noTable = Assert.Throws<InvalidOperationException>(() => ReferenceTable.Load("moon"));

        Assert.Contains("slope", noRow.Message, StringComparison.Ordinal);
        Assert.Contains("moon", noTable.Message, StringComparison.Ordinal);
    }

    /// <summary>ECM 330: echogenicity 0–3 and 0–4; the older type 1–4 and fibre alignment from memory.</summary>
    [Theory]
    [InlineData("echogenicity-0-3", 0, 3)]
    [InlineData("echogenicity-0-4", 0, 4)]
    [InlineData("echogenicity-1-4", 1, 4)]
    [InlineData("fibre-alignment-0-3", 0, 3)]
    public void A_grade_outside_its_scale_is_refused(string id, int lowest, int highest)
    {
        GradeScale scale = GradeScales.Find(id)!;

        Assert.Equal(lowest, new Grade(scale, lowest).Value);
        Assert.Equal(highest, new Grade(scale, highest).Value);
        Assert.Throws<ArgumentOutOfRangeException>(() => new Grade(scale, lowest - 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Grade(scale, highest + 1));
    }

    [Fact]
    public void A_share_of_nothing_is_refused()
    {
        Assert.Equal(25.0, Percent.Of(new SquareCentimetres(0.5), new SquareCentimetres(2)).Value, 12);
        Assert.Throws<ArgumentOutOfRangeException>(() => Percent.Of(new SquareCentimetres(0.5), new SquareCentimetres(0)));
    }

    [Theory]
    [InlineData(-0.01)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_lesion_area_below_zero_or_without_value_is_refused(double area) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LesionArea.Measured(new SquareCentimetres(area)));
}
