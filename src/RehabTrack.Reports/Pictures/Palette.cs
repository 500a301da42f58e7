namespace RehabTrack.Reports.Pictures;

/// <summary>
/// The colours of every picture, by their role. Each is a variable that the page sets, so a picture follows light, dark and paper by itself.
/// Amber and red stand only where a person must act, never without a shape and a word.
/// </summary>
public static class Palette
{
    /// <summary>Words, and the lesion.</summary>
    public const string Ink = "var(--ink)";

    /// <summary>Quiet words and outlines.</summary>
    public const string Soft = "var(--soft)";

    /// <summary>Rules of a scale.</summary>
    public const string Line = "var(--line)";

    /// <summary>What is held to belong together: tracks, the trend.</summary>
    public const string Accent = "var(--accent)";

    /// <summary>The measurement-error band, and what is chosen.</summary>
    public const string Tint = "var(--tint)";

    /// <summary>The ligament.</summary>
    public const string Limb = "var(--limb)";

    /// <summary>The sheet behind the picture.</summary>
    public const string Sheet = "var(--sheet)";

    /// <summary>What a person must look at.</summary>
    public const string Amber = "var(--amber)";

    /// <summary>What a person must act on.</summary>
    public const string Red = "var(--red)";
}
