using RehabTrack.Rechecks.Permits;

namespace RehabTrack.Web.Components.Exercise;

/// <summary>How a permit looks: amber and red only where a person must act.</summary>
public static class PermitLooks
{
    /// <summary>The class that gives shape and colour.</summary>
    public static string Of(PermitState state) =>
        state switch
        {
            PermitState.Live => "good",
            PermitState.Held or PermitState.Closed or PermitState.Paused => "note",
            PermitState.NothingSigned or PermitState.Lapsed => "amber",
            PermitState.Floor or PermitState.Stopped => "red",
        };
}
