using RehabTrack.Records.Exercise;

namespace RehabTrack.Records.Keeping;

/// <summary>A form of a horse as a person is filling it in; it counts for nothing until it is signed.</summary>
internal sealed class TypedFormRecord : KeptRecord
{
    public Guid HorseId { get; set; }

    public Guid PersonId { get; set; }

    public TypedForm Form { get; set; }

    /// <summary>What is typed, by the names that the fields of the form have.</summary>
    public required string FieldsJson { get; set; }

    public DateTime WrittenAt { get; set; }
}
