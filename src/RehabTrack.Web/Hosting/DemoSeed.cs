using RehabTrack.Exchange;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Start;

namespace RehabTrack.Web.Hosting;

/// <summary>The demo's definition and import files, as they come along in this program.</summary>
public static class DemoSeed
{
    /// <summary>The definition.</summary>
    public static DemoDefinition Definition()
    {
        using Stream stream = Open("practice.json");
        return DemoDefinition.Read(stream);
    }

    /// <summary>The cases of its import files, read the way a user's file is.</summary>
    /// <exception cref="InvalidOperationException">A row of them is not taken.</exception>
    public static IReadOnlyList<CaseFile> Cases(DemoDefinition definition)
    {
        ArgumentNullException.ThrowIfNull(definition);
        return [.. definition.Imports.SelectMany(Read)];
    }

    /// <summary>The exercise of its horses.</summary>
    public static IReadOnlyList<DemoPlan> Plans()
    {
        using Stream stream = Open("exercise.json");
        return DemoPlan.Read(stream);
    }

    private static IReadOnlyList<CaseFile> Read(string name)
    {
        using Stream stream = Open(name);
        // The files' dates are a story's; they are shifted to today when they are loaded.
        SheetResult sheet = SheetImport.Read(stream, today: null);
        return sheet is { FileProblem: null, NeedsMapping: false, RejectedRows: 0 }
            ? sheet.Cases
            : throw new InvalidOperationException($"The demo's file {name} is not read whole.");
    }

    private static Stream Open(string name) =>
        typeof(DemoSeed).Assembly.GetManifestResourceStream($"seed/{name}")
        ?? throw new InvalidOperationException($"The demo's file {name} is not part of this build.");
}
