namespace RehabTrack.Rechecks.Repeats;

/// <summary>What was done twice: it decides which error the repeats tell.</summary>
public enum RepeatKind
{
    /// <summary>The same horse on the same day, imaged and traced anew: the error that examinations have.</summary>
    SameHorseAndDay,

    /// <summary>The same image traced anew: the error of tracing alone, smaller than that of an examination.</summary>
    SameImage,
}
