using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Imports;

/// <summary>A file to import.</summary>
public sealed record ApplyImportInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The cases as read from the file.</summary>
    public required IReadOnlyList<CaseFile> Cases { get; init; }

    /// <summary>What was chosen.</summary>
    public ImportChoices Choices { get; init; } = new();

    /// <summary>The staged file it came from, to be marked as done.</summary>
    public Guid? ImportFileId { get; init; }

    /// <summary>Gets the number of readings written so far, up to the preview's new readings.</summary>
    public IProgress<int>? Progress { get; init; }
}
