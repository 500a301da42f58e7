using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Records.Imports;

/// <summary>What a file would bring.</summary>
public sealed record PreviewImportInput
{
    /// <summary>The cases as read from the file.</summary>
    public required IReadOnlyList<CaseFile> Cases { get; init; }

    /// <summary>What was chosen so far.</summary>
    public ImportChoices Choices { get; init; } = new();
}
