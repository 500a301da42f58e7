namespace RehabTrack.Rechecks.Exams;

/// <summary>What stands behind an examination.</summary>
public enum ExaminationState
{
    /// <summary>Not signed yet: may lower or freeze work, never passes a gate.</summary>
    Draft,

    /// <summary>Signed by a vet of this practice; amended, never overwritten.</summary>
    Signed,

    /// <summary>Done and reported by another practice.</summary>
    Outside,

    /// <summary>Imported: not signed here, raises no reminder and permits nothing.</summary>
    History,
}
