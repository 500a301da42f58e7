using System.Text.RegularExpressions;
using RehabTrack.Reports.Codes;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace RehabTrack.Reports.Tests.Codes;

public sealed partial class ScanCodeTests
{
    private const int Quiet = 4;
    private const int Finder = 7;

    /// <summary>Points to a module, for a reader of pictures.</summary>
    private const int Module = 4;

    /// <summary>ISO/IEC 18004: a square in three corners, seven modules wide, with a light ring and a dark heart, inside a quiet margin of four.</summary>
    [Fact]
    public void It_has_the_squares_of_the_standard_in_three_corners_and_a_quiet_margin()
    {
        ScanCode code = ScanCode.Of($"http://localhost:5080/s/{new string('a', 43)}");
        bool[,] dark = Dark(code);
        int far = code.Size - Quiet - Finder;

        Assert.Equal(0, (code.Size - 2 * Quiet - 17) % 4);
        foreach ((int row, int column) in ((int, int)[])[(Quiet, Quiet), (Quiet, far), (far, Quiet)])
        {
            for (int down = 0; down < Finder; down++)
            {
                for (int right = 0; right < Finder; right++)
                {
                    int ring = Math.Max(Math.Abs(down - 3), Math.Abs(right - 3));
                    Assert.Equal(ring != 2, dark[row + down, column + right]);
                }
            }
        }

        for (int at = 0; at < code.Size; at++)
        {
            for (int margin = 0; margin < Quiet; margin++)
            {
                Assert.False(dark[margin, at] || dark[at, margin] || dark[code.Size - 1 - margin, at] || dark[at, code.Size - 1 - margin]);
            }
        }
    }

    /// <summary>A reader that had no part in writing it: ZXing.Net 0.16.11.</summary>
    [Theory]
    [InlineData("http://localhost:5080/s/")]
    [InlineData("https://a-long-name-of-a-practice.stable.example/s/")]
    public void A_reader_finds_the_address_in_it(string begin)
    {
        string address = begin + new string('q', 43);
        ScanCode code = ScanCode.Of(address);
        bool[,] dark = Dark(code);
        byte[] grey = new byte[code.Size * code.Size * Module * Module];
        for (int at = 0; at < grey.Length; at++)
        {
            (int row, int column) = Math.DivRem(at, code.Size * Module);
            grey[at] = dark[row / Module, column / Module] ? byte.MinValue : byte.MaxValue;
        }

        RGBLuminanceSource picture = new(grey, code.Size * Module, code.Size * Module, RGBLuminanceSource.BitmapFormat.Gray8);

        Assert.Equal(address, new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(picture)))?.Text);
    }

    [Fact]
    public void Another_text_is_another_square() => Assert.NotEqual(ScanCode.Of("a").Path, ScanCode.Of("b").Path);

    private static bool[,] Dark(ScanCode code)
    {
        bool[,] dark = new bool[code.Size, code.Size];
        foreach (Match run in Run().Matches(code.Path))
        {
            int Figure(string name) => int.Parse(run.Groups[name].Value, System.Globalization.CultureInfo.InvariantCulture);
            for (int at = 0; at < Figure("width"); at++)
            {
                dark[Figure("row"), Figure("column") + at] = true;
            }
        }

        return dark;
    }

    [GeneratedRegex(@"M(?<column>\d+) (?<row>\d+)h(?<width>\d+)v1h-\k<width>z", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Run();
}
