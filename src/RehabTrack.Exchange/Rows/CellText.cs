namespace RehabTrack.Exchange.Rows;

/// <summary>
/// Text that a spreadsheet would take for a formula is written with an apostrophe before it (OWASP ASVS 5.0, 1.2.10); reading takes off
/// exactly the one that writing put on.
/// </summary>
public static class CellText
{
    /// <summary>The text as it is written into a cell.</summary>
    /// <param name="text">The text, trimmed.</param>
    public static string Guard(string text) => IsFormula(text) ? $"'{text}" : text;

    /// <summary>The text of a cell.</summary>
    /// <param name="cell">The cell.</param>
    public static string Unguard(string cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return cell is ['\'', ..] && IsFormula(cell) ? cell[1..] : cell;
    }

    private static bool IsFormula(string text)
    {
        ReadOnlySpan<char> rest = text.AsSpan().TrimStart('\'');
        return rest is ['=' or '+' or '-' or '@' or '\t' or '\r' or '\n' or '\0', ..];
    }
}
