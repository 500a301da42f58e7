using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Cases;

/// <summary>A case as it shall be.</summary>
public sealed record ChangeCaseInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The case.</summary>
    public required Guid Id { get; init; }

    /// <summary>The version that was read.</summary>
    public required Guid Version { get; init; }

    /// <summary>Limb.</summary>
    public required Limb Limb { get; init; }

    /// <summary>Structure.</summary>
    public required Structure Structure { get; init; }

    /// <summary>Where the tape starts; null when not known.</summary>
    public Landmark? Landmark { get; init; }

    /// <summary>Date of the injury; null when not known.</summary>
    public DateOnly? Onset { get; init; }

    /// <summary>Date of the latest re-injury; null when there was none.</summary>
    public DateOnly? Reinjury { get; init; }

    /// <summary>When it was first diagnosed.</summary>
    public DateOnly? FirstDiagnosis { get; init; }

    /// <summary>The diagnosis, in the vet's words.</summary>
    public string? Diagnosis { get; init; }

    /// <summary>The work the horse shall come back to.</summary>
    public string? TargetWork { get; init; }

    /// <summary>Target as a share of the first trend examination, above 0 to 1; null takes the setting.</summary>
    public double? TargetFraction { get; init; }

    /// <summary>What is known of the other limb.</summary>
    public OtherLimb OtherLimb { get; init; }

    /// <summary>Point of hock to tarsometatarsal joint, cm, measured on this horse; null when not measured.</summary>
    public double? HockToJointCm { get; init; }

    /// <summary>The length of a zone, cm, measured on this horse; null when not measured.</summary>
    public double? ZoneLengthCm { get; init; }

    /// <summary>The vet who is responsible.</summary>
    public Guid? ResponsibleVetId { get; init; }
}
