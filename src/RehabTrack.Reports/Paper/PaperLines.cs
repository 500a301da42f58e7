namespace RehabTrack.Reports.Paper;

/// <summary>Headings and paragraphs.</summary>
internal sealed class PaperLines : PaperPart
{
    private const int LinesToBegin = 3;
    private const double CautionBar = 2.5;

    private readonly IReadOnlyList<string> _lines;
    private readonly PaperStyle _style;

    private PaperLines(PaperLetters letters, string text, PaperStyle style, double indent)
    {
        _lines = letters.Lines(text, style, PaperFlow.Width - indent);
        _style = style;
        Indent = indent;
    }

    /// <inheritdoc />
    public override bool KeepsNext => IsWhole;

    /// <inheritdoc />
    public override double Least =>
        Above + Over + (_style.LinePoints * (IsWhole ? _lines.Count : Math.Min(LinesToBegin, _lines.Count))) + Below;

    /// <summary>Whether it stands on one page with what follows: a heading, or what is said of a table.</summary>
    private bool IsWhole { get; init; }

    /// <summary>White above it, but at the top of a page.</summary>
    private double Above { get; init; }

    /// <summary>White between the rule over it and its first line; 0 without a rule.</summary>
    private double Over { get; init; }

    private double Below { get; init; } = PaperFlow.Gap;

    private double Indent { get; }

    private (double Height, PaperColour Colour)? Rule { get; init; }

    /// <summary>A heading.</summary>
    public static PaperLines Of(PaperHeading heading, PaperLetters letters)
    {
        PaperStyle style = heading.Rank switch
        {
            1 => new PaperStyle(19, 24, true, PaperColour.Ink),
            2 => new PaperStyle(13, 17, true, PaperColour.Ink),
            _ => new PaperStyle(10.5, 14.5, true, PaperColour.Ink),
        };
        return new PaperLines(letters, heading.Text, style, 0)
        {
            IsWhole = true,
            Above = 2 * PaperFlow.Gap,
            Over = heading.Rank <= 2 ? PaperFlow.Gap : 0,
            Below = PaperFlow.Gap / 2,
            Rule = heading.Rank switch
            {
                1 => (2, PaperColour.Accent),
                2 => (PaperFlow.Hairline, PaperColour.Line),
                _ => null,
            },
        };
    }

    /// <summary>A paragraph.</summary>
    public static PaperLines Of(PaperText text, PaperLetters letters)
    {
        PaperStyle style = text.Tone switch
        {
            PaperTone.Soft => new PaperStyle(9, 12.5, false, PaperColour.Soft),
            PaperTone.Strong => new PaperStyle(10.5, 14.5, true, PaperColour.Ink),
            _ => new PaperStyle(10, 14, false, PaperColour.Ink),
        };
        return new PaperLines(letters, text.Text, style, text.Tone == PaperTone.Caution ? CautionBar + PaperFlow.Gap : 0)
        {
            IsWhole = text.KeepsNext,
        };
    }

    /// <inheritdoc />
    public override void PutOn(PaperFlow flow)
    {
        flow.Skip(flow.IsFresh ? 0 : Above);
        if (Rule is var (height, colour))
        {
            flow.Rule(height, colour);
            flow.Skip(Over);
        }

        foreach (string line in _lines)
        {
            flow.Need(_style.LinePoints);
            if (Indent > 0)
            {
                flow.Bar(CautionBar, _style.LinePoints, PaperColour.Amber);
            }

            flow.Words(line, _style, PaperFlow.Side + Indent);
            flow.Skip(_style.LinePoints);
        }

        flow.Skip(Below);
    }
}
