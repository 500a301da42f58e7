namespace RehabTrack.Rechecks.Care;

/// <summary>What an entry of a horse's care is.</summary>
public enum CareGroup
{
    /// <summary>Something done to the horse.</summary>
    Treatment,

    /// <summary>Something given over days.</summary>
    Medicine,

    /// <summary>Something seen.</summary>
    Sign,
}
