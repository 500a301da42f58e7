using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Records.Exercise;

/// <summary>Names of the fields of a day's log, as forms post them and problems name them.</summary>
public static class LogFields
{
    /// <summary>The day.</summary>
    public const string Date = "date";

    /// <summary>Outings of the day.</summary>
    public const string Outings = "outings";

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
