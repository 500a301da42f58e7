using RehabTrack.Rechecks.Watch;

namespace RehabTrack.Web.Components.Cases;

/// <summary>The way to the next step about what stands.</summary>
public static class StandingLinks
{
    /// <summary>The address.</summary>
    /// <param name="finding">What stands.</param>
    /// <param name="caseId">The case it is told with.</param>
    /// <param name="horseId">The horse.</param>
    public static string Of(StandingFinding finding, Guid caseId, Guid horseId)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Next switch
        {
            StandingStep.LookAtCase or StandingStep.SettleLink => $"/cases/{caseId}",
            StandingStep.Decide => $"/horses/{horseId}/decision",
            StandingStep.Examine => $"/cases/{caseId}/examinations/new",
            StandingStep.Book => $"/rechecks?case={caseId}&do=book",
            StandingStep.CallYard => $"/horses/{horseId}",
        };
    }
}
