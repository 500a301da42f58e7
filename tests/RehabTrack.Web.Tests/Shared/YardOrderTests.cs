using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Shared.Yard;

namespace RehabTrack.Web.Tests.Shared;

public sealed class YardOrderTests
{
    private static readonly DateOnly Today = new(2026, 11, 4);

    private static YardHorse Horse(string name, PermitState state = PermitState.Live) =>
        new()
        {
            Id = Guid.CreateVersion7(),
            Name = name,
            Markings = null,
            Limbs = [],
            HasPhoto = false,
            Yard = null,
            Permit = new Permit
            {
                Date = Today,
                State = state,
                Work = Work.None,
                BeforeWeek = Work.None,
                SignedWork = Work.None,
                Reasons = [],
                VoidAfter = Today,
            },
            LoggedToday = [],
            Concern = null,
            Release = YardRelease.None,
            Recheck = null,
        };

    [Fact]
    public void A_concern_comes_first_then_what_needs_a_vet_then_the_rest_by_name()
    {
        YardHorse late = Horse("Dale") with { Recheck = new YardRecheck(Today.AddDays(-1), null, false) };
        YardHorse gate = Horse("Elm");
        gate = gate with { Permit = gate.Permit with { Due = Today.AddDays(-1) } };
        YardHorse[] byName =
        [
            Horse("Ash"),
            Horse("Birch", PermitState.Stopped),
            Horse("Cob", PermitState.Closed),
            late,
            gate,
            Horse("Fir", PermitState.Lapsed),
            Horse("Gorse", PermitState.Paused),
            Horse("Hazel") with
            {
                Recheck = new YardRecheck(Today.AddDays(-1), null, true),
            },
            Horse("Ivy", PermitState.Floor) with
            {
                Concern = new OpenConcern(DateTime.UnixEpoch, null, null),
            },
        ];

        Assert.Equal(
            ["Ivy", "Birch", "Dale", "Elm", "Fir", "Gorse", "Ash", "Cob", "Hazel"],
            YardOrder.Of(byName).Select(horse => horse.Name)
        );
    }
}
