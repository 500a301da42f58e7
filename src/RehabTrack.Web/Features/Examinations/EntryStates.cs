namespace RehabTrack.Web.Features.Examinations;

/// <summary>Where what was typed is: the words that page, style sheet and script share.</summary>
public static class EntryStates
{
    /// <summary>The server has kept it.</summary>
    public const string Sent = "sent";

    /// <summary>The server has read it and keeps it only when it is signed: the browser holds it until then.</summary>
    public const string Kept = "kept";

    /// <summary>Another person changed the same fields: the browser holds it until one of both is chosen.</summary>
    public const string Waiting = "waiting";

    /// <summary>The server did not take it: the browser holds it and tries again.</summary>
    public const string NotSent = "not-sent";
}
