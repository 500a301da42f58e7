namespace RehabTrack.Reports.Paper;

/// <summary>The place on pages of A4 where the next part begins; all in points from the left and the top of a page.</summary>
internal sealed class PaperFlow
{
    /// <summary>Width of A4.</summary>
    public const double PageWidth = 595.28;

    /// <summary>Height of A4.</summary>
    public const double PageHeight = 841.89;

    /// <summary>White at the left and the right.</summary>
    public const double Side = 51;

    /// <summary>Where a page begins.</summary>
    public const double Top = 51;

    /// <summary>Where the foot of a page begins.</summary>
    public const double Bottom = PageHeight - 62;

    /// <summary>Width between the white.</summary>
    public const double Width = PageWidth - (2 * Side);

    /// <summary>White between one part and the next.</summary>
    public const double Gap = 6;

    /// <summary>How high a fine rule is.</summary>
    public const double Hairline = 0.6;

    private double _y = Top;

    /// <summary>The pages so far; the last one is being filled.</summary>
    public List<PaperPage> Pages { get; } = [new()];

    /// <summary>Whether nothing stands on the page yet.</summary>
    public bool IsFresh => _y <= Top;

    /// <summary>What is left of the page.</summary>
    public double Left => Bottom - _y;

    private PaperPage Page => Pages[^1];

    /// <summary>Puts parts below what stands; what keeps with the next part goes to the next page with it.</summary>
    public void Put(IReadOnlyList<PaperPart> parts)
    {
        for (int at = 0; at < parts.Count; at++)
        {
            double least = parts[at].Least;
            for (int next = at; next < parts.Count - 1 && parts[next].KeepsNext; next++)
            {
                least += parts[next + 1].Least;
            }

            Need(least);
            parts[at].PutOn(this);
        }
    }

    /// <summary>Begins a new page where so much does not fit on this one.</summary>
    public void Need(double height)
    {
        if (height > Left && !IsFresh)
        {
            Turn();
        }
    }

    /// <summary>Begins a new page.</summary>
    public void Turn()
    {
        Pages.Add(new PaperPage());
        _y = Top;
    }

    /// <summary>Leaves white.</summary>
    public void Skip(double height) => _y += height;

    /// <summary>A line of letters at the height that is reached.</summary>
    /// <param name="text">The letters.</param>
    /// <param name="style">How they stand.</param>
    /// <param name="left">Where they begin.</param>
    /// <param name="down">How far below that height.</param>
    public void Words(string text, PaperStyle style, double left, double down = 0)
    {
        if (text.Length > 0)
        {
            Page.Words.Add(new PaperWords(text, left, _y + down + style.Baseline, style));
        }
    }

    /// <summary>A rule over the width of the page.</summary>
    public void Rule(double height, PaperColour colour) => Page.Rules.Add(new PaperRule(Side, _y, Width, height, colour));

    /// <summary>A rule at the left, beside what stands there.</summary>
    public void Bar(double width, double height, PaperColour colour) => Page.Rules.Add(new PaperRule(Side, _y, width, height, colour));
}
