using System.Globalization;
using System.Text;
using RehabTrack.Naughty;
using RehabTrack.Reports.Paper;
using RehabTrack.Wording;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace RehabTrack.Reports.Tests.Paper;

/// <summary>The files, read by a reader that had no part in writing them: PdfPig 0.1.16.</summary>
public sealed class PaperFileTests
{
    private const double Tolerance = 0.5;

    [Fact]
    public void It_is_A4_names_itself_and_says_at_each_foot_which_page_it_is()
    {
        using PdfDocument file = Open(new PaperHeading("Meadow Lark", 1), Long(200));

        Assert.InRange(file.NumberOfPages, 2, 9);
        Assert.Equal(("A title", "A practice"), (file.Information.Title, file.Information.Author));
        foreach (Page page in file.GetPages())
        {
            // ISO 216: 210 mm by 297 mm, at 72 points to 25.4 mm.
            Assert.Equal((210.0, 297.0), (Math.Round(page.Width / 72 * 25.4), Math.Round(page.Height / 72 * 25.4)));
            string number = string.Format(TextCulture.Default, PaperTexts.PageOf, page.Number, file.NumberOfPages);
            Assert.EndsWith(Bare("A foot" + number), Bare(page.Text), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Its_letters_come_along_in_it()
    {
        using PdfDocument file = Open(new PaperText("Meadow Lark, лошадь"), new PaperText("bold", PaperTone.Strong));

        // A font of a subset has a name that begins with six letters and a plus (ISO 32000-1, 9.6.4; from memory).
        Assert.All(file.GetPage(1).Letters, letter => Assert.Matches("^[A-Z]{6}[+]", letter.FontName));
        Assert.Equal(3, file.GetPage(1).Letters.Select(letter => letter.FontName).Distinct().Count());
    }

    /// <summary>Languages of horses and their people around the practice, and names as they are written there.</summary>
    [Theory]
    [InlineData("Žluťoučký kůň, Černý blesk")]
    [InlineData("Őszi Szellő, Ünnepi Tűz")]
    [InlineData("Żółta Łąka, Święty Gaj")]
    [InlineData("Ägidius, Größe, Öl, Ümit, İnci")]
    [InlineData("Ἵππος, Αλέξανδρος")]
    [InlineData("Белая лошадь, Ђорђе")]
    [InlineData("Đường Trường Sơn")]
    [InlineData("−12 %, 3.4 cm³, ±0.5, “so”, 10–20 µm, “it’s” …")]
    public void It_writes_the_scripts_of_its_fonts(string words)
    {
        using PdfDocument file = Open(new PaperText(words), new PaperText(words, PaperTone.Strong));

        Assert.StartsWith(Bare(words + words), Bare(file.GetPage(1).Text), StringComparison.Ordinal);
    }

    [Fact]
    public void A_letter_that_no_font_has_leaves_its_place_and_the_paper_says_so()
    {
        using PdfDocument file = Open(new PaperText("Horse 馬 and عربي"));

        Assert.StartsWith("Horse\uFFFDand\uFFFD\uFFFD\uFFFD\uFFFD", Bare(file.GetPage(1).Text), StringComparison.Ordinal);
        Assert.Contains(
            Bare(string.Format(TextCulture.Default, PaperTexts.Unwritable, "\uFFFD")),
            Bare(file.GetPage(1).Text),
            StringComparison.Ordinal
        );
        using PdfDocument all = Open(new PaperText("Horse"));
        Assert.DoesNotContain("\uFFFD", all.GetPage(1).Text, StringComparison.Ordinal);
    }

    /// <summary>An accent that is typed by itself is put on its letter (Unicode Standard Annex 15, form C).</summary>
    [Fact]
    public void Accents_are_put_on_their_letters_and_marks_that_only_steer_a_screen_are_left_out()
    {
        using PdfDocument file = Open(new PaperText("u\u0308ber\u200D\u202E Gra\u0301s"));

        Assert.StartsWith("überGrás", Bare(file.GetPage(1).Text), StringComparison.Ordinal);
    }

    /// <summary>As a heading, a paragraph, in a cell and at the foot; nothing runs out of the page and no letter is lost.</summary>
    [Fact]
    public void Text_that_has_broken_programs_stands_on_the_page_letter_by_letter()
    {
        foreach (string words in NaughtyStrings.Pages)
        {
            using PdfDocument file = PdfDocument.Open(
                PaperFile.Write(
                    new PaperSheet
                    {
                        Title = words,
                        Author = words,
                        Foot = words,
                        Blocks =
                        [
                            new PaperText(words),
                            new PaperHeading(words, 2),
                            new PaperTable(
                                [new PaperColumn(words), new PaperColumn("b", IsFigure: true)],
                                [new PaperRow(words, "1"), new PaperRow(words)]
                            ),
                        ],
                    }
                )
            );
            string read = Bare(string.Concat(file.GetPages().Select(BodyOf)));

            string whole = Written(words) + Written(words);
            Assert.Equal(whole, read[..Math.Min(whole.Length, read.Length)]);
            Assert.All(
                file.GetPages().SelectMany(page => page.Letters.Select(letter => (page, letter))),
                one =>
                {
                    Assert.InRange(one.letter.StartBaseLine.X, PaperFlow.Side - Tolerance, one.page.Width - PaperFlow.Side + Tolerance);
                    Assert.InRange(one.letter.EndBaseLine.X, PaperFlow.Side - Tolerance, one.page.Width - PaperFlow.Side + Tolerance);
                    Assert.InRange(one.letter.StartBaseLine.Y, 0, one.page.Height);
                }
            );
        }
    }

    [Fact]
    public void A_table_says_its_head_again_on_each_page_and_loses_no_row()
    {
        string[] names = [.. Enumerable.Range(1, 150).Select(row => $"row{row}x")];
        using PdfDocument file = Open(
            new PaperTable(
                [new PaperColumn("Level"), new PaperColumn("Area", IsFigure: true)],
                [.. names.Select(name => new PaperRow(name, "1.2"))]
            )
        );

        Assert.All(file.GetPages(), page => Assert.StartsWith("LevelArea", Bare(page.Text), StringComparison.Ordinal));
        string read = Bare(string.Concat(file.GetPages().Select(page => BodyOf(page)["LevelArea".Length..])));
        Assert.Equal(string.Concat(names.Select(name => name + "1.2")), read);
    }

    [Fact]
    public void A_row_that_is_longer_than_a_page_goes_on_on_the_next_one()
    {
        string words = string.Join(' ', Enumerable.Range(1, 3_000).Select(word => $"w{word}"));
        using PdfDocument file = Open(new PaperTable([new PaperColumn("a"), new PaperColumn("b")], [new PaperRow("short", words)]));

        Assert.InRange(file.NumberOfPages, 2, 20);
        string read = Bare(string.Concat(file.GetPages().Select(BodyOf)));
        Assert.All(Enumerable.Range(1, 3_000), word => Assert.Contains($"w{word}", read, StringComparison.Ordinal));
    }

    [Fact]
    public void A_heading_never_stands_alone_at_the_foot_of_a_page()
    {
        for (int lines = 30; lines < 60; lines++)
        {
            using PdfDocument file = Open(
                new PaperText(string.Join('\n', Enumerable.Repeat("line", lines))),
                new PaperHeading("Heading", 2),
                new PaperText("after")
            );

            Page page = file.GetPages().Single(page => page.Text.Contains("Heading", StringComparison.Ordinal));
            Assert.Contains("after", page.Text, StringComparison.Ordinal);
        }
    }

    /// <summary>A heading, what is said of the table below it, and a table that is short stand on one page.</summary>
    [Fact]
    public void A_short_table_is_not_broken_and_not_parted_from_what_is_said_of_it()
    {
        bool turned = false;
        for (int lines = 20; lines < 55; lines++)
        {
            using PdfDocument file = Open(
                new PaperText(string.Join('\n', Enumerable.Repeat("line", lines))),
                new PaperHeading("Heading", 3),
                new PaperText("said of it", PaperTone.Soft, KeepsNext: true),
                new PaperTable([new PaperColumn("Level")], [.. Enumerable.Range(1, 6).Select(row => new PaperRow($"row{row}x"))])
            );

            Page page = file.GetPages().Single(page => page.Text.Contains("Heading", StringComparison.Ordinal));
            Assert.Contains("Heading" + "saidofit" + "Level" + "row1xrow2xrow3xrow4xrow5xrow6x", Bare(page.Text), StringComparison.Ordinal);
            turned |= page.Number > 1;
        }

        Assert.True(turned);
    }

    [Fact]
    public async Task Files_that_are_written_at_the_same_moment_do_not_disturb_each_other()
    {
        string[] words = [.. Enumerable.Range(0, 64).Select(one => string.Concat(Enumerable.Repeat($"Žluťoučký лошадь {one} ", 40)))];

        byte[][] files = await Task.WhenAll(
            words.Select(said => Task.Run(() => Written(new PaperText(said), new PaperText(said, PaperTone.Strong))))
        );

        foreach ((string said, byte[] written) in words.Zip(files))
        {
            using PdfDocument file = PdfDocument.Open(written);
            Assert.StartsWith(Bare(said + said), Bare(string.Concat(file.GetPages().Select(BodyOf))), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_foot_that_is_too_long_is_cut_and_leaves_the_number_alone()
    {
        using PdfDocument file = PdfDocument.Open(
            PaperFile.Write(
                new PaperSheet
                {
                    Title = "t",
                    Author = "a",
                    Foot = string.Join(' ', Enumerable.Repeat("practice", 60)),
                    Blocks = [new PaperText("x")],
                }
            )
        );

        Assert.EndsWith("…Page1of1", Bare(file.GetPage(1).Text), StringComparison.Ordinal);
    }

    private static PaperText Long(int lines) => new(string.Join('\n', Enumerable.Range(1, lines).Select(line => $"line {line}")));

    private static PdfDocument Open(params IReadOnlyList<PaperBlock> blocks) => PdfDocument.Open(Written(blocks));

    private static byte[] Written(params IReadOnlyList<PaperBlock> blocks) =>
        PaperFile.Write(
            new PaperSheet
            {
                Title = "A title",
                Author = "A practice",
                Foot = "A foot",
                Blocks = blocks,
            }
        );

    /// <summary>What stands above the foot.</summary>
    private static string BodyOf(Page page) =>
        Bare(
            string.Concat(
                page.Letters.Where(letter => page.Height - letter.StartBaseLine.Y <= PaperFlow.Bottom).Select(letter => letter.Value)
            )
        );

    private static string Bare(string text) => string.Concat(text.EnumerateRunes().Where(letter => !Rune.IsWhiteSpace(letter)));

    /// <summary>What the paper shall make of a text, told from the rule; which letters the fonts have is asked of them.</summary>
    private static string Written(string text)
    {
        StringBuilder written = new();
        string whole = string.Concat(text.EnumerateRunes()).Normalize(NormalizationForm.FormC);
        foreach (Rune letter in whole.EnumerateRunes().Where(letter => !Rune.IsWhiteSpace(letter)))
        {
            if (Rune.GetUnicodeCategory(letter) != UnicodeCategory.Format)
            {
                bool isThere = Enum.GetValues<PaperFace>().Any(face => PaperFonts.Width(face, false, letter.Value) is not null);
                written.Append(isThere ? letter.ToString() : "\uFFFD");
            }
        }

        return written.ToString();
    }
}
