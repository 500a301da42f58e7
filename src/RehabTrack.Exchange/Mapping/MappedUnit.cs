namespace RehabTrack.Exchange.Mapping;

/// <summary>The unit in which a sheet gives a length or an area.</summary>
public enum MappedUnit
{
    /// <summary>cm, and cm² for an area.</summary>
    Centimetre,

    /// <summary>mm, and mm² for an area.</summary>
    Millimetre,
}
