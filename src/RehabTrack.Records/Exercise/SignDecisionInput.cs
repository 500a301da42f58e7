using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>A decision to sign.</summary>
public sealed record SignDecisionInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The horse.</summary>
    public required Guid HorseId { get; init; }

    /// <summary>The number of the last line that was seen.</summary>
    public required int SeenNumber { get; init; }

    /// <summary>What is decided; who signs is put in.</summary>
    public required Decision Decision { get; init; }

    /// <summary>What the visit found.</summary>
    public required Visit Visit { get; init; }

    /// <summary>The step up that the rules are asked about.</summary>
    public AskedStep Asked { get; init; }

    /// <summary>Why it differs from what the rules suggest; needed when it does.</summary>
    public string? Disagreement { get; init; }

    /// <summary>The earlier decision of the same horse that this one corrects; null when it corrects none.</summary>
    public Guid? CorrectsId { get; init; }
}
