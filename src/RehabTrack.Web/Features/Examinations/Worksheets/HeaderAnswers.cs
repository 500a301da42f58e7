namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>The values of a choice between yes, no and not recorded (blank).</summary>
public static class HeaderAnswers
{
    public const string Yes = "yes";

    public const string No = "no";

    /// <summary>The value for an answer.</summary>
    public static string Of(bool? answer) =>
        answer switch
        {
            true => Yes,
            false => No,
            null => string.Empty,
        };
}
