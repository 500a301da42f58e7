using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;

namespace RehabTrack.Web.Shared.Yard;

/// <summary>The order of the trainer's page: what needs a person comes first.</summary>
public static class YardOrder
{
    /// <summary>Open concerns, then horses that a vet has to see or sign for, then the rest; each in the order of names as given.</summary>
    public static IReadOnlyList<YardHorse> Of(IReadOnlyList<YardHorse> byName)
    {
        ArgumentNullException.ThrowIfNull(byName);
        return
        [
            .. byName.OrderBy(horse =>
                horse.Concern is not null ? 0
                : IsFlagged(horse) ? 1
                : 2
            ),
        ];
    }

    private static bool IsFlagged(YardHorse horse) =>
        horse.Permit.State
            is PermitState.NothingSigned
                or PermitState.Floor
                or PermitState.Lapsed
                or PermitState.Paused
                or PermitState.Stopped
        || horse.Permit.Due < horse.Permit.Date
        || horse.Recheck is { IsBooked: false } recheck && recheck.Date < horse.Permit.Date;
}
