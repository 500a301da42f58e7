using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>An examination that counts, as it shall be.</summary>
public sealed record AmendExaminationInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The examination.</summary>
    public required Guid Id { get; init; }

    /// <summary>The version that was read.</summary>
    public required Guid Version { get; init; }

    /// <summary>Why.</summary>
    public required string Reason { get; init; }

    /// <summary>
    /// The input hash of the analysis that the person was shown, with the examination amended; null when none was shown. When the records
    /// say something else by now, nothing is amended.
    /// </summary>
    public string? SeenHash { get; init; }

    /// <summary>What it shall say.</summary>
    public required ExaminationContent Content { get; init; }
}
