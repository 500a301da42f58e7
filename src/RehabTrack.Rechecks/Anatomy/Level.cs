using System.Text.Json.Serialization;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Anatomy;

/// <summary>
/// Where along the limb something was read: a distance on the tape, or a zone of a scheme. Levels of a tape and of zones, or of two
/// schemes, are never compared; for a stable order a tape comes before zones.
/// </summary>
[JsonConverter(typeof(LevelJson))]
public readonly record struct Level : IComparable<Level>
{
    /// <summary>A distance distal to the landmark.</summary>
    /// <param name="onTape">cm.</param>
    public Level(Centimetres onTape)
    {
        Position = onTape;
    }

    /// <summary>A zone.</summary>
    /// <param name="zone">The zone.</param>
    public Level(Zone zone)
        : this(zone.Scheme, zone.Ordinal) { }

    private Level(ZoneScheme scheme, int ordinal)
    {
        Scheme = scheme;
        Position = new Centimetres(ordinal * ZoneSchemes.SpacingOf(scheme));
    }

    /// <summary>The zone scheme; null for a distance on the tape.</summary>
    public ZoneScheme? Scheme { get; }

    /// <summary>
    /// On the scale of the computation: the distance on the tape, cm; for a zone its place in the order times a nominal spacing, which is
    /// no length and is never shown. What a person reads comes from <see cref="OnTape"/> or <see cref="Zone"/>.
    /// </summary>
    public Centimetres Position { get; }

    /// <summary>The distance on the tape, cm; null for a zone.</summary>
    public Centimetres? OnTape => Scheme is null ? Position : null;

    /// <summary>The zone; null for a distance on the tape.</summary>
    public Zone? Zone =>
        Scheme is { } scheme
            ? new Zone(scheme, (int)Math.Round(Position.Value / ZoneSchemes.SpacingOf(scheme), MidpointRounding.ToEven))
            : null;

    /// <summary>The level at a position: on the tape as it is, in a scheme the nearest zone.</summary>
    /// <param name="position">On the scale of the computation, cm.</param>
    /// <param name="scheme">The scheme; null for the tape.</param>
    public static Level At(Centimetres position, ZoneScheme? scheme)
    {
        if (scheme is not { } zones)
        {
            return new Level(position);
        }

        double nearest = Math.Round(position.Value / ZoneSchemes.SpacingOf(zones), MidpointRounding.ToEven);
        return new Level(zones, (int)Math.Clamp(nearest, 0, ZoneSchemes.NamesOf(zones).Count - 1));
    }

    /// <summary>
    /// How many cm of the horse a cm of <see cref="Position"/> stands for: 1 on the tape; in a scheme it follows from the zone length
    /// measured on the horse, and is null without one.
    /// </summary>
    /// <param name="scheme">The scheme; null for the tape.</param>
    /// <param name="zoneLength">The length of a zone measured on the horse, above 0 cm; null when not measured.</param>
    internal static double? ScaleOf(ZoneScheme? scheme, Centimetres? zoneLength) =>
        scheme is { } zones ? zoneLength?.Value / ZoneSchemes.SpacingOf(zones) : 1;

    /// <summary>A distance on the tape is a level.</summary>
    public static implicit operator Level(Centimetres onTape) => new(onTape);

    /// <summary>Orders along the limb.</summary>
    public static bool operator <(Level left, Level right) => left.CompareTo(right) < 0;

    /// <summary>Orders along the limb.</summary>
    public static bool operator >(Level left, Level right) => left.CompareTo(right) > 0;

    /// <summary>Orders along the limb.</summary>
    public static bool operator <=(Level left, Level right) => left.CompareTo(right) <= 0;

    /// <summary>Orders along the limb.</summary>
    public static bool operator >=(Level left, Level right) => left.CompareTo(right) >= 0;

    /// <inheritdoc />
    public int CompareTo(Level other) =>
        Scheme == other.Scheme ? Position.CompareTo(other.Position) : Nullable.Compare(Scheme, other.Scheme);

    /// <summary>The level in invariant notation, for logs and tests; pages write levels through Wording.</summary>
    public override string ToString() => Zone is { } zone ? zone.Name : Position.ToString();
}
