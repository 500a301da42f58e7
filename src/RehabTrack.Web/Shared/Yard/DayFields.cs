using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Web.Shared.Yard;

/// <summary>Names of the fields of a day's log, as forms post them and problems name them.</summary>
public static class DayFields
{
    /// <summary>Names the wish, so that a second tap logs nothing twice.</summary>
    public const string Command = "command";

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
