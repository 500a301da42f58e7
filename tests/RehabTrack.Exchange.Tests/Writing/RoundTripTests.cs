using System.Text;
using System.Text.Json;
using CsCheck;
using RehabTrack.Exchange.Rows;
using RehabTrack.Exchange.Writing;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Tests.Writing;

public sealed class RoundTripTests
{
    private static readonly Gen<string> Name = Gen.Select(
            Gen.OneOf("", "", "=", "+", "-", "@", "'", "'=", "''@"),
            Gen.Char["abcÅßλ .,;:\"'=\n€"].Array[1, 8],
            (start, letters) => (start + new string(letters)).Trim()
        )
        .Where(name => name.Length > 0 && FoldedText.Of(name).Length > 0);

    private static readonly Gen<double> Cents = Gen.Int[1, 400].Select(value => value / 100.0);

    private static readonly Gen<Reading> Readings =
        from part in Gen.Enum<Part>()
        from plane in Gen.Enum<ImagePlane>()
        from level in Gen.Int[0, 600]
        from ligament in Cents.Nullable()
        from share in Gen.Int[0, 100].Nullable()
        from diffuse in Gen.Bool
        from thickness in Cents.Nullable()
        from width in Gen.Double[0.01, 8].Nullable()
        from echogenicity in Gen.Int[0, 4].Nullable()
        from fibre in Gen.Int[0, 3]
        from note in Name.Null()
        from role in Gen.Enum<ReadingRole>()
        select new Reading
        {
            Id = "",
            Part = part,
            Plane = plane,
            Level = new Centimetres(level / 10.0),
            Role = role,
            LigamentArea = ligament is { } area ? new SquareCentimetres(area) : null,
            LesionArea =
                diffuse ? LesionArea.Diffuse
                : share is { } percent && ligament is { } whole ? LesionArea.Measured(new SquareCentimetres(whole * percent / 100))
                : LesionArea.Unknown,
            LesionPercent = !diffuse && ligament is null && share is { } only ? new Percent(only) : null,
            Thickness = thickness is { } thick ? new Centimetres(thick) : null,
            Width = width is { } wide ? new Centimetres(wide) : null,
            Echogenicity = echogenicity is { } grade ? new Grade(GradeScales.Echogenicity0To4, grade) : null,
            FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, fibre),
            Note = note,
        };

    private static readonly Gen<CaseFile> Cases =
        from label in Name
        from horse in Name.Null()
        from chip in Gen.OneOf(null, "999000000000042", "DE418180000001")
        from limb in Gen.Enum<Limb>()
        from structure in Gen.Enum<Structure>()
        from onset in Gen.Int[0, 300].Nullable()
        from examiner in Name.Null()
        from readings in Readings.Array[1, 6].Array[1, 4]
        from named in Gen.Bool
        from stance in Gen.Enum<Stance>()
        select new CaseFile(
            label,
            new HorseIdentity(horse, chip, chip is null ? null : new DateOnly(2015, 4, 1)),
            new CaseCourse
            {
                Id = label,
                Limb = limb,
                Structure = structure,
                Landmark = AnatomyRules.UsualLandmark(limb),
                Onset = onset is { } day ? new DateOnly(2024, 1, 1).AddDays(day) : null,
                Examinations =
                [
                    .. readings.Select(
                        (ofOne, index) =>
                            Examination(
                                new DateOnly(2025, 1, 1).AddDays(30 * index),
                                named ? $"visit {index}" : null,
                                stance,
                                examiner,
                                [.. ofOne.DistinctBy(reading => (reading.Part, reading.Plane, reading.Level))]
                            )
                    ),
                ],
            }
        );

    [Theory]
    [InlineData(SheetStyle.Comma)]
    [InlineData(SheetStyle.Semicolon)]
    public void What_is_written_reads_back_as_the_same_cases(SheetStyle style) =>
        Cases
            .Array[0, 4]
            .Sample(
                files =>
                {
                    CaseFile[] distinct = [.. files.DistinctBy(file => file.Label).OrderBy(file => file.Label, StringComparer.Ordinal)];
                    using MemoryStream sheet = new();
                    CaseFileWriter.Write(sheet, distinct, style);

                    SheetResult result = SheetImport.Read(sheet, new DateOnly(2026, 1, 1));

                    Assert.Null(result.FileProblem);
                    Assert.Empty(result.Rejected);
                    Assert.Equal(Text(distinct), Text(result.Cases));
                },
                seed: "0000000000000",
                iter: 300,
                threads: 1
            );

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("-", "'-")]
    [InlineData("@sum", "'@sum")]
    [InlineData("+49", "'+49")]
    [InlineData("'=x", "''=x")]
    [InlineData("'tis", "'tis")]
    [InlineData("Alder", "Alder")]
    public void Text_that_a_spreadsheet_takes_for_a_formula_is_written_with_an_apostrophe_and_read_without(string text, string cell)
    {
        Assert.Equal(cell, CellText.Guard(text));
        Assert.Equal(text, CellText.Unguard(cell));
    }

    [Theory]
    [InlineData(SheetStyle.Comma)]
    [InlineData(SheetStyle.Semicolon)]
    public void The_example_reads_back_without_a_word_and_gives_a_verdict(SheetStyle style)
    {
        SheetResult result = SheetText.ReadBytes(StarterSheets.WriteExample(style));

        Assert.Empty(result.Rejected);
        Assert.Empty(result.Cautions);
        CaseFile followed = result.Cases[0];
        CaseAnalysis analysis = CaseAnalyser.Analyse(followed.Course, [], new AnalysisSettings(), new DateOnly(2026, 6, 1));
        Assert.Equal((4, Verdict.Healing), (followed.Course.Examinations.Count, analysis.Trend.Verdict));
        Assert.Equal(Measure.LesionVolume, analysis.Trend.Measure);
    }

    [Fact]
    public void The_empty_sheet_holds_every_column_in_the_documented_order_and_nothing_else()
    {
        string text = Encoding.UTF8.GetString(StarterSheets.WriteEmpty()).TrimStart('\uFEFF').TrimEnd();

        Assert.Equal(
            "case,horse,limb,structure,part,landmark,onset_date,examination_date,measurer,stance,level_cm,lesion,role,ligament_area_cm2,"
                + "lesion_area_cm2,thickness_cm,width_cm,echogenicity_scale,echogenicity_grade,fibre_alignment_grade,note,examination,"
                + "microchip,birth_date,plane,fibre_alignment_scale,examiner,transducer,lesion_percent,repeat,other_limb,"
                + "other_limb_ligament_area_cm2,other_limb_thickness_cm,origin_cm,division_cm,medial_insertion_cm,lateral_insertion_cm,"
                + "zone_scheme,zone,zone_length_cm",
            text
        );
        Assert.False(SheetText.Read(text + "\n").NeedsMapping);
    }

    private static Examination Examination(DateOnly date, string? name, Stance stance, string? examiner, IReadOnlyList<Reading> readings) =>
        new()
        {
            Id = name is null ? date.ToString("O", System.Globalization.CultureInfo.InvariantCulture) : $"{date:O} {name}",
            Name = name,
            Date = date,
            Stance = stance,
            State = ExaminationState.History,
            Examiner = examiner,
            Readings = readings,
        };

    /// <summary>Cases as text, without the ids of readings, which name lines of the file.</summary>
    private static string Text(IEnumerable<CaseFile> files) =>
        JsonSerializer.Serialize(
            files.Select(file =>
                file with
                {
                    Course = file.Course with
                    {
                        Examinations =
                        [
                            .. file.Course.Examinations.Select(examination =>
                                examination with
                                {
                                    Readings = [.. examination.Readings.Select(reading => reading with { Id = "" })],
                                }
                            ),
                        ],
                    },
                }
            )
        );
}
