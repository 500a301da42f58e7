using System.Security.Cryptography;
using System.Text;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Sheets;

/// <summary>The headings of a sheet and its first rows, for a person to say what they mean.</summary>
/// <param name="HeadingRow">The line of the headings.</param>
/// <param name="Headings">The headings as they stand in the file, trimmed; empty ones stay.</param>
/// <param name="Samples">The first filled rows.</param>
public sealed record SheetShape(int HeadingRow, IReadOnlyList<string> Headings, IReadOnlyList<SheetRecord> Samples)
{
    /// <summary>Known again by this: the headings in their order, without regard to case, space, hyphen and underscore.</summary>
    public string Fingerprint
    {
        get
        {
            string folded = string.Join('\n', Headings.Select(FoldedText.Of)).TrimEnd('\n');
            return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(folded)))[..32];
        }
    }
}
