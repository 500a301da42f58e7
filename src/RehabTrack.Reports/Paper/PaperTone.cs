namespace RehabTrack.Reports.Paper;

/// <summary>How a paragraph is said.</summary>
public enum PaperTone
{
    /// <summary>As the rest.</summary>
    Plain,

    /// <summary>What is read second.</summary>
    Soft,

    /// <summary>What is looked for first.</summary>
    Strong,

    /// <summary>A caution, with a rule beside it.</summary>
    Caution,
}
