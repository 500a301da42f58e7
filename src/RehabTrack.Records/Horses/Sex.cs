namespace RehabTrack.Records.Horses;

/// <summary>A horse's sex.</summary>
public enum Sex
{
    /// <summary>Mare.</summary>
    Mare,

    /// <summary>Stallion.</summary>
    Stallion,

    /// <summary>Gelding.</summary>
    Gelding,
}
