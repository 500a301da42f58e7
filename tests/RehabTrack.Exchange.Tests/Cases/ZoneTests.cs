using System.Text;
using RehabTrack.Exchange.Mapping;
using RehabTrack.Exchange.Rows;
using RehabTrack.Exchange.Writing;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Exchange.Tests.Cases;

/// <summary>Levels told by zones, from a file and back into one.</summary>
public sealed class ZoneTests
{
    private const string Head =
        "case,limb,part,examination_date,level_cm,zone_scheme,zone,zone_length_cm,ligament_area_cm2,lesion_area_cm2,landmark,origin_cm";

    private static SheetResult Read(params string[] rows) => SheetText.ReadRows(Head, rows);

    [Fact]
    public void Zones_are_read_and_written_back_without_a_level_in_cm()
    {
        SheetResult result = Read(
            "C1,LH,body,2026-01-10,,hind-9,2A,4.1,1.2,0,point-of-hock,",
            "C1,LH,body,2026-01-10,,HIND 9,2b,,1.3,0.4,,",
            "C1,LH,medial-branch,2026-01-10,,hind-9,4A,,0.6,0.1,,",
            "C1,LH,body,2026-03-10,22,,,,1.3,0.3,,8"
        );

        Assert.Empty(result.Rejected);
        CaseFile file = Assert.Single(result.Cases);
        Assert.Equal(4.1, file.Course.ZoneLength?.Value);
        Assert.Equal([ZoneScheme.HindNine, null], file.Course.Examinations.Select(examination => examination.Zones));
        Assert.Equal(["2A", "2B", "4A"], file.Course.Examinations[0].Readings.Select(reading => reading.Level.ToString()));
        Assert.Equal(22, file.Course.Examinations[1].Readings[0].Level.OnTape?.Value);

        using MemoryStream written = new();
        CaseFileWriter.Write(written, [file], SheetStyle.Semicolon);
        string text = Encoding.UTF8.GetString(written.ToArray());
        CaseFile again = Assert.Single(SheetText.ReadBytes(written.ToArray()).Cases);

        Assert.Contains(";hind-9;2B;4,1", text, StringComparison.Ordinal);
        Assert.Equal(file.Course.ZoneLength, again.Course.ZoneLength);
        Assert.Equal(file.Course.Landmark, again.Course.Landmark);
        Assert.Equal(
            file.Course.Examinations.SelectMany(one => one.Readings.Select(reading => (one.Id, one.Zones, reading.Part, reading.Level))),
            again.Course.Examinations.SelectMany(one => one.Readings.Select(reading => (one.Id, one.Zones, reading.Part, reading.Level)))
        );
    }

    [Theory]
    [InlineData("C1,LH,body,2026-01-10,,hind-7,4A,,1.2,0,,", "zone", "zone-unknown")]
    [InlineData("C1,LH,body,2026-01-10,,hind-9,,,1.2,0,,", "zone", "zone-missing")]
    [InlineData("C1,LH,body,2026-01-10,,,2A,,1.2,0,,", "zone", "zone-without-scheme")]
    [InlineData("C1,LH,body,2026-01-10,22,hind-9,2A,,1.2,0,,", "level_cm", "level-and-zones")]
    [InlineData("C1,LH,body,2026-01-10,,hind-8,2A,,1.2,0,,", "zone_scheme", "unknown-word")]
    [InlineData("C1,LH,body,2026-01-10,,fore-7,2A,,1.2,0,,", "zone_scheme", "zone-scheme-other-limb")]
    [InlineData("C1,LH,body,2026-01-10,,hind-9,2A,12,1.2,0,,", "zone_length_cm", "zone-length-out-of-range")]
    [InlineData("C1,LH,body,2026-01-10,,hind-7,2A,,1.2,0,point-of-hock,", "landmark", "zone-scheme-other-landmark")]
    [InlineData("C1,LH,body,2026-01-10,,hind-9,2A,,1.2,0,,8", "origin_cm", "fixed-point-by-zones")]
    public void What_is_wrong_is_named_by_its_column(string row, string column, string code)
    {
        RejectedRow rejected = Assert.Single(Read(row).Rejected);

        Assert.Equal((column, code), (rejected.Column, rejected.Problem.Code));
    }

    [Fact]
    public void A_zone_read_twice_and_levels_told_in_two_ways_on_one_day_are_refused()
    {
        SheetResult result = Read(
            "C1,LH,body,2026-01-10,,hind-9,2A,,1.2,0,,",
            "C1,LH,body,2026-01-10,,hind-9,2a,,1.3,0,,",
            "C1,LH,body,2026-01-10,,hind-9,2B,,1.3,0,,",
            "C1,LH,body,2026-01-10,22,,,,1.3,0,,"
        );

        Assert.Equal(
            [(3, "zone", "reading-twice"), (5, "zone_scheme", "zone-scheme-differs")],
            result.Rejected.Select(rejected => (rejected.Row, rejected.Column, rejected.Problem.Code))
        );
        Assert.Equal(2, result.Cases[0].Course.Examinations[0].Readings.Count);
    }

    [Fact]
    public void A_sheet_needs_levels_or_zones_with_their_scheme()
    {
        Assert.False(
            SheetText.Read("case,part,examination_date,zone_scheme,zone,ligament_area_cm2\nC1,body,2026-01-10,hind-9,2A,1.2\n").NeedsMapping
        );
        Assert.Equal(["zone_scheme"], SheetColumns.MissingFrom(column => column is not ("level_cm" or "zone_scheme")));
        Assert.Equal(["level_cm"], SheetColumns.MissingFrom(column => column is not ("level_cm" or "zone")));
    }

    [Fact]
    public void A_foreign_heading_is_taken_for_a_zone() => Assert.Equal("zone", HeadingWords.Find("Limb zone")?.Column);
}
