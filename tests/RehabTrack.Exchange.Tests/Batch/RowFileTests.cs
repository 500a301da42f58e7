using System.Reflection;
using System.Text;
using RehabTrack.Exchange.Batch;
using RehabTrack.Exchange.Rows;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Tests.Batch;

public sealed class RowFileTests
{
    private static readonly RowPlan Plan = new(new Dictionary<string, ColumnSource>(StringComparer.Ordinal));

    private static readonly SheetRow Bare = new()
    {
        Row = 7,
        Id = "7",
        Case = "A",
        Date = new DateOnly(2026, 1, 10),
        Reading = new ReadingDraft(),
        Plan = Plan,
    };

    private static readonly SheetRow Full = Bare with
    {
        Row = 8,
        Id = "8",
        Case = "B",
        Horse = "Bay mare",
        Microchip = "999000000000012",
        BirthDate = new DateOnly(2015, 5, 1),
        Limb = Limb.RightHind,
        Structure = Structure.SuspensoryLigament,
        Landmark = Landmark.PointOfHock,
        Onset = new DateOnly(2025, 12, 1),
        Date = new DateOnly(2026, 2, 10),
        Examination = "second",
        Stance = Stance.NonWeightBearing,
        Examiner = "AB",
        Transducer = "linear 12 MHz",
        OtherLimb = OtherLimb.HasLesion,
        ZoneLengthCm = 4.1,
        FixedPoints =
        [
            new FixedPoint(FixedPointKind.Origin, new Centimetres(4.5)),
            new FixedPoint(FixedPointKind.Division, new Centimetres(19)),
        ],
        Reading = new ReadingDraft
        {
            Part = Part.MedialBranch,
            LevelCm = 21.5,
            ZoneScheme = ZoneScheme.HindNine,
            Zone = "4B",
            Plane = ImagePlane.LongAxis,
            Lesion = "core",
            Role = ReadingRole.Worst,
            LigamentAreaCm2 = 1.25,
            LesionAreaCm2 = 0,
            LesionIsDiffuse = true,
            LesionPercent = 12.5,
            ThicknessCm = .94,
            WidthCm = 1.1,
            OtherLimbLigamentAreaCm2 = 1.05,
            OtherLimbThicknessCm = .9,
            EchogenicityScale = GradeScales.Echogenicity0To4,
            EchogenicityGrade = 3,
            FibreAlignmentScale = GradeScales.Echogenicity1To4,
            FibreAlignmentGrade = 2,
            Measurer = "CD",
            Repeat = "2",
            Note = "käme \"so\"\nzurück",
        },
    };

    [Fact]
    public void Rows_come_back_as_they_were_whatever_stood_before()
    {
        SheetRow[] rows = [Bare, Full, Full with { Row = 9, Id = "9" }, Bare, Full with { Row = 10, Id = "10", Case = "C", Horse = null }];

        List<SheetRow> read = ThereAndBack(rows);
        Assert.Equal(rows.Select(row => row.FixedPoints), read.Select(row => row.FixedPoints));
        Assert.Equal(rows.Select(row => row with { FixedPoints = [] }), read.Select(row => row with { FixedPoints = [] }));
    }

    /// <summary>A property that is new and forgotten in the file would come back as its default: the full row has no default in it.</summary>
    [Fact]
    public void The_full_row_of_these_tests_has_every_property_set()
    {
        AssertAllSet(Full, Bare, nameof(SheetRow.Plan));
        AssertAllSet(Full.Reading, Bare.Reading);
    }

    private static List<SheetRow> ThereAndBack(SheetRow[] rows)
    {
        using MemoryStream stream = new();
        using BinaryWriter writer = new(stream, Encoding.UTF8);
        SheetRow? before = null;
        foreach (SheetRow row in rows)
        {
            RowFile.Write(writer, row, before);
            before = row;
        }

        stream.Position = 0;
        using BinaryReader reader = new(stream, Encoding.UTF8);
        List<SheetRow> read = [];
        while (stream.Position < stream.Length)
        {
            read.Add(RowFile.Read(reader, read.LastOrDefault(), Plan));
        }

        return read;
    }

    private static void AssertAllSet<T>(T full, T bare, params string[] but)
    {
        foreach (PropertyInfo property in typeof(T).GetProperties().Where(property => !but.Contains(property.Name)))
        {
            Assert.False(Equals(property.GetValue(full), property.GetValue(bare)), property.Name);
        }
    }
}
