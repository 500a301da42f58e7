using System.Text;

namespace RehabTrack.Reports.Calendar;

/// <summary>
/// Folds the lines of an iCalendar file (RFC 5545, 3.1) between characters. The library counts units of UTF-16 and may cut a character in
/// two, and half a character cannot be written as UTF-8.
/// </summary>
internal static class LineFolds
{
    private const int MostOctets = 75;
    private const string LineBreak = "\r\n";

    /// <summary>The same file with its lines folded at 75 octets at most.</summary>
    public static string Renew(string file)
    {
        string unfolded = file.Replace(LineBreak + " ", "", StringComparison.Ordinal);
        StringBuilder folded = new(file.Length);
        foreach (string line in unfolded.Split(LineBreak, StringSplitOptions.RemoveEmptyEntries))
        {
            int octets = 0;
            foreach (Rune rune in line.EnumerateRunes())
            {
                if (octets + rune.Utf8SequenceLength > MostOctets)
                {
                    folded.Append(LineBreak).Append(' ');
                    octets = 1;
                }

                folded.Append(rune.ToString());
                octets += rune.Utf8SequenceLength;
            }

            folded.Append(LineBreak);
        }

        return folded.ToString();
    }
}
