using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Exchange.Writing;

/// <summary>The sheets that a person can download to start from.</summary>
public static class StarterSheets
{
    private const string Example = "RehabTrack.Exchange.Writing.example.csv";

    /// <summary>The headings without rows.</summary>
    /// <param name="style">Separator and decimal mark.</param>
    public static byte[] WriteEmpty(SheetStyle style = SheetStyle.Comma) => Write([], style);

    /// <summary>Two invented cases: one followed over four examinations, one with the least that is needed.</summary>
    /// <param name="style">Separator and decimal mark.</param>
    public static byte[] WriteExample(SheetStyle style = SheetStyle.Comma)
    {
        using Stream resource =
            typeof(StarterSheets).Assembly.GetManifestResourceStream(Example)
            ?? throw new InvalidOperationException("The example sheet is not part of this build.");
        using MemoryStream sheet = new();
        resource.CopyTo(sheet);
        return Write(SheetImport.Read(sheet, today: null).Cases, style);
    }

    private static byte[] Write(IReadOnlyList<CaseFile> files, SheetStyle style)
    {
        using MemoryStream written = new();
        CaseFileWriter.Write(written, files, style);
        return written.ToArray();
    }
}
