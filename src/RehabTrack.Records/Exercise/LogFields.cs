using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Records.Exercise;

/// <summary>Names of the fields of a day's log, as forms post them and problems name them.</summary>
public static class LogFields
{
    /// <summary>The day.</summary>
    public const string Date = "date";

    /// <summary>Outings of the day.</summary>
    public const string Outings = "outings";

    /// <summary>How the horse was worked, once for each way.</summary>
    public const string Modes = "modes";

    /// <summary>Circles ridden.</summary>
    public const string Circles = "circles";

    /// <summary>Over which ground, once for each.</summary>
    public const string Surfaces = "surfaces";

    /// <summary>How the horse stood.</summary>
    public const string Turnout = "turnout";

    /// <summary>The minutes of a gait.</summary>
    public static string Of(Gait gait) =>
        gait switch
        {
            Gait.Walk => "walk",
            Gait.Trot => "trot",
            Gait.Canter => "canter",
            Gait.Gallop => "gallop",
        };
}
