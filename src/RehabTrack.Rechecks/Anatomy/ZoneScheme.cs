namespace RehabTrack.Rechecks.Anatomy;

/// <summary>A way of dividing a limb into zones, from a landmark down. The zones stand in <c>shared/zones.json</c>.</summary>
public enum ZoneScheme
{
    /// <summary>Fore limb, seven zones from the accessory carpal bone.</summary>
    ForeSeven,

    /// <summary>Hind limb, seven zones from the tarsometatarsal joint.</summary>
    HindSeven,

    /// <summary>Hind limb, nine zones from the point of hock.</summary>
    HindNine,
}
