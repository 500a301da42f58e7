using System.Collections;
using System.Globalization;
using System.Text;
using QRCoder;

namespace RehabTrack.Reports.Codes;

/// <summary>A text as a square that a telephone's camera reads (QR code, ISO/IEC 18004), as data for a drawing.</summary>
/// <param name="Size">Modules along a side, the quiet margin of four included: the drawing's width and height.</param>
/// <param name="Path">The dark modules as the data of an SVG path, a unit a module.</param>
public sealed record ScanCode(int Size, string Path)
{
    /// <summary>The square of a text; a quarter of what is printed may be soiled at most before it is unreadable (level Q).</summary>
    public static ScanCode Of(string text)
    {
        ArgumentException.ThrowIfNullOrEmpty(text);
        using QRCodeData code = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.Q);
        StringBuilder path = new();
        for (int row = 0; row < code.ModuleMatrix.Count; row++)
        {
            BitArray modules = code.ModuleMatrix[row];
            for (int column = 0; column < modules.Count; column++)
            {
                int first = column;
                while (column < modules.Count && modules[column])
                {
                    column++;
                }

                if (column > first)
                {
                    path.Append(CultureInfo.InvariantCulture, $"M{first} {row}h{column - first}v1h{first - column}z");
                }
            }
        }

        return new ScanCode(code.ModuleMatrix.Count, path.ToString());
    }
}
