using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>A draft to start.</summary>
public sealed record StartExaminationInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The case.</summary>
    public required Guid CaseId { get; init; }

    /// <summary>The practice's date of the visit; null takes today.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Tells two of one date apart.</summary>
    public string? Name { get; init; }

    /// <summary>Stance; null takes that of the last examination.</summary>
    public Stance? Stance { get; init; }

    /// <summary>The other practice that did it; null when done here.</summary>
    public string? OutsidePractice { get; init; }

    /// <summary>Whether the rows start from the levels of the last examination: levels, parts, lesion names and roles, no values.</summary>
    public bool FromLast { get; init; } = true;
}
