namespace RehabTrack.Records.Imports;

/// <summary>What a person chose about one case of a file.</summary>
public sealed record CaseChoice
{
    /// <summary>Nothing chosen.</summary>
    public static CaseChoice Usual { get; } = new();

    /// <summary>Leave the case out.</summary>
    public bool Skip { get; init; }

    /// <summary>It is another horse than any that is here.</summary>
    public bool NewHorse { get; init; }

    /// <summary>It is this horse.</summary>
    public Guid? HorseId { get; init; }

    /// <summary>It is this case of that horse; null takes the one of the same label, else a new one.</summary>
    public Guid? CaseId { get; init; }

    /// <summary>Take limb, structure, landmark and onset from the file where they differ.</summary>
    public bool TakeCaseFields { get; init; }

    /// <summary>The examinations to amend, by their ids in the file ("2026-03-01").</summary>
    public IReadOnlyList<string> Amend { get; init; } = [];
}
