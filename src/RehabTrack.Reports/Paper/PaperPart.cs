namespace RehabTrack.Reports.Paper;

/// <summary>A part of a sheet with its lines broken, before its page is known.</summary>
internal abstract class PaperPart
{
    /// <summary>What must fit on a page for it to begin there, in points.</summary>
    public abstract double Least { get; }

    /// <summary>Whether the next part must begin on the same page.</summary>
    public abstract bool KeepsNext { get; }

    /// <summary>Lays a part of a sheet out.</summary>
    public static PaperPart Of(PaperBlock block, PaperLetters letters) =>
        block switch
        {
            PaperHeading heading => PaperLines.Of(heading, letters),
            PaperText text => PaperLines.Of(text, letters),
            PaperTable table => new PaperGrid(table, letters),
            _ => throw new ArgumentOutOfRangeException(nameof(block), block, "This part has no place on paper yet."),
        };

    /// <summary>Puts it where the flow is.</summary>
    public abstract void PutOn(PaperFlow flow);
}
