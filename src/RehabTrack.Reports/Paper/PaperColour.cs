namespace RehabTrack.Reports.Paper;

/// <summary>A colour as red, green and blue, each 0 to 255; the values are those of the pages in light.</summary>
internal readonly record struct PaperColour(byte Red, byte Green, byte Blue)
{
    /// <summary>Words.</summary>
    public static PaperColour Ink { get; } = new(0x20, 0x30, 0x2f);

    /// <summary>Quiet words.</summary>
    public static PaperColour Soft { get; } = new(0x56, 0x64, 0x5f);

    /// <summary>Rules.</summary>
    public static PaperColour Line { get; } = new(0xdd, 0xd3, 0xbf);

    /// <summary>The rule over the head of a sheet.</summary>
    public static PaperColour Accent { get; } = new(0x0f, 0x5c, 0x63);

    /// <summary>The rule beside a caution.</summary>
    public static PaperColour Amber { get; } = new(0x8a, 0x5a, 0x00);
}
