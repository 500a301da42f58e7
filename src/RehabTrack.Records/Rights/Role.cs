namespace RehabTrack.Records.Rights;

/// <summary>What a person is to the practice; one role a person.</summary>
public enum Role
{
    /// <summary>Looks after people and settings; signs nothing.</summary>
    Administrator,

    /// <summary>Examines, signs and decides.</summary>
    Vet,

    /// <summary>Enters, books and imports; never signs.</summary>
    Assistant,

    /// <summary>Trains or rides horses of the practice.</summary>
    Trainer,

    /// <summary>Owns horses of the practice.</summary>
    Owner,

    /// <summary>Sent a horse here.</summary>
    ReferringVet,
}
