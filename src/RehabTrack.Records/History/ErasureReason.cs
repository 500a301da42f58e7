namespace RehabTrack.Records.History;

/// <summary>Why words of the trail were erased. Kept by name.</summary>
public enum ErasureReason
{
    /// <summary>The person they are about asked for it, or nobody may keep them any longer.</summary>
    PersonErased,

    /// <summary>They were kept as long as the practice keeps them.</summary>
    KeptLongEnough,
}
