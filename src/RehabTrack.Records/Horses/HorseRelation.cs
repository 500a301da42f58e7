namespace RehabTrack.Records.Horses;

/// <summary>What a person is to a horse.</summary>
public enum HorseRelation
{
    /// <summary>Owner.</summary>
    Owner,

    /// <summary>Trainer or rider.</summary>
    Trainer,

    /// <summary>The vet who sent it.</summary>
    ReferringVet,
}
