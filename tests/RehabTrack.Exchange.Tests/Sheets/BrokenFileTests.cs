using System.Text;
using CsCheck;

namespace RehabTrack.Exchange.Tests.Sheets;

public sealed class BrokenFileTests
{
    [Theory]
    [InlineData("")]
    [InlineData(" \n\r\n\t")]
    [InlineData(";;;\n;;;\n")]
    public void An_empty_file_is_said_to_be_empty(string text) => Assert.Equal("file-empty", SheetText.Read(text).FileProblem?.Code);

    [Fact]
    public void A_file_of_a_mark_only_is_empty() => Assert.Equal("file-empty", SheetText.ReadBytes([0xEF, 0xBB, 0xBF]).FileProblem?.Code);

    [Theory]
    [InlineData("PK\u0003\u0004 and so on", "file-is-workbook")]
    [InlineData("%PDF-1.7", "file-is-pdf")]
    [InlineData("GIF89a", "file-is-picture")]
    [InlineData("case;part\0;level", "file-is-binary")]
    [InlineData("\u0001\u0002\u0003\u0004\u0005\u0006", "file-is-binary")]
    public void A_file_that_is_no_text_is_named_for_what_it_is(string start, string code) =>
        Assert.Equal(code, SheetText.ReadBytes(Encoding.Latin1.GetBytes(start)).FileProblem?.Code);

    [Fact]
    public void A_file_of_another_shape_asks_for_a_mapping_and_shows_its_headings()
    {
        SheetResult result = SheetText.Read("Patient;Datum;CSA\nBeech;10.03.2026;1,2\n");

        Assert.True(result.NeedsMapping);
        Assert.Equal(["Patient", "Datum", "CSA"], result.Shape!.Headings);
        Assert.Equal("Beech", result.Shape.Samples[0].CellAt(0));
        Assert.Contains("level_cm", result.MissingColumns);
        Assert.Empty(result.Cases);
    }

    [Fact]
    public void Two_headings_of_one_column_are_an_error()
    {
        SheetResult result = SheetText.ReadRows("case;part;examination_date;level_cm;Level cm;width_cm", "C1;body;2026-01-10;20;21;1");

        Assert.Equal("heading-twice", result.FileProblem?.Code);
        Assert.Equal("level_cm", result.FileProblem?.Field);
    }

    [Fact]
    public void A_quote_that_is_never_closed_names_its_line()
    {
        SheetResult result = SheetText.Read(
            SheetText.Small + "\"C1,Alder,LH,body,2026-03-10,24,1.4,0.3\nC1,Alder,LH,body,2026-03-10,26,1.4,0.3\n"
        );

        Assert.Equal("quote-not-closed", result.FileProblem?.Code);
        Assert.Equal(["5"], result.FileProblem!.Arguments);
    }

    [Fact]
    public void Fifty_megabytes_of_another_shape_are_looked_at_without_being_kept()
    {
        byte[] line = Encoding.ASCII.GetBytes("2026-01-10 12:00:01 some line of a log that is no sheet at all\n");
        byte[] bytes = new byte[50_000_000 / line.Length * line.Length];
        for (int at = 0; at < bytes.Length; at += line.Length)
        {
            line.CopyTo(bytes, at);
        }

        SheetResult result = SheetText.ReadBytes(bytes);

        Assert.True(result.NeedsMapping);
        Assert.True(result.Shape!.Samples.Count < 20);
    }

    [Fact]
    public void Fifty_megabytes_without_a_line_end_are_refused()
    {
        byte[] bytes = new byte[50_000_000];
        bytes.AsSpan().Fill((byte)'x');

        Assert.Equal("record-too-long", SheetText.ReadBytes(bytes).FileProblem?.Code);
    }

    [Fact]
    public void A_file_beyond_the_limit_is_refused_before_it_is_read()
    {
        using HugeStream stream = new(65_000_000);

        Assert.Equal("file-too-large", SheetImport.Read(stream, null).FileProblem?.Code);
    }

    [Fact]
    public void Random_bytes_never_throw() =>
        Gen.Byte.Array[0, 400].Sample(bytes => Assert.NotNull(SheetText.ReadBytes(bytes)), seed: "0000000000000", iter: 3000, threads: 1);

    [Fact]
    public void Random_texts_below_right_headings_never_throw_and_every_row_is_accounted_for()
    {
        Gen<string> cell = Gen.Frequency(
            (6, Gen.String["0123456789.,;-+eE \"'\n\rabcLH"].Select(text => text.Length > 12 ? text[..12] : text)),
            (1, Gen.String),
            (3, Gen.OneOf("LH", "body", "origin", "2026-01-10", "2026-13-40", "20", "1.5", "diffuse", "worst", "0-4", "4", "C1"))
        );
        Gen<string> row = cell.Array[6, 12]
            .Select(cells => string.Join(';', cells.Select(text => $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"")));
        row.Array[1, 12]
            .Sample(
                rows =>
                {
                    SheetResult result = SheetText.ReadRows(
                        "case;part;examination_date;level_cm;ligament_area_cm2;lesion_area_cm2;thickness_cm;echogenicity_grade;echogenicity_scale;role;lesion;note",
                        rows
                    );
                    if (result.FileProblem is null)
                    {
                        Assert.Equal(result.Rows, result.RejectedRows + result.RowOfReading.Count);
                    }
                },
                seed: "0000000000000",
                iter: 2000,
                threads: 1
            );
    }

    /// <summary>A stream that only has a length: reading it would fail the test.</summary>
    private sealed class HugeStream(long length) : MemoryStream
    {
        public override long Length { get; } = length;

        public override int Read(Span<byte> buffer) => throw new InvalidOperationException("It must not be read.");
    }
}
