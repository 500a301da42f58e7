using RehabTrack.Records.Horses;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Shares;

/// <summary>A new share link.</summary>
public sealed record RenewShareInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>For whom.</summary>
    public required Guid PersonId { get; init; }

    /// <summary>What the person is to the horse or horses.</summary>
    public required HorseRelation Relation { get; init; }

    /// <summary>The one horse of an owner's link; null for a trainer's, which opens all the horses they train in a yard.</summary>
    public Guid? HorseId { get; init; }

    /// <summary>The yard of a trainer's link; null for horses that stand in none, and for the others'.</summary>
    public Guid? YardId { get; init; }

    /// <summary>The one report of a referring vet's link; null for the others'.</summary>
    public Guid? ReportId { get; init; }

    /// <summary>SHA-256 of its secret, 64 lower-case hexadecimal digits. The secret itself never comes here.</summary>
    public required string SecretHash { get; init; }
}
