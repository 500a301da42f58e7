using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Simulation.Permits;

namespace RehabTrack.Rechecks.Tests.Permits;

public sealed class SigningPreviewTests
{
    private static readonly Story Story42 = Story.Of(Plans.Simple).LogsEach(0, 42);

    private static DecisionSigned Signature(DecisionKind kind, int day, PlanPlace? place) =>
        new()
        {
            Order = 1000,
            RecordedOn = Story.Day(day),
            Decision = new Decision
            {
                Kind = kind,
                PlanVersionId = Plans.Simple.Id,
                From = Story.Day(day),
                Place = place,
            },
        };

    [Fact]
    public void A_vet_sees_the_permit_before_and_after()
    {
        SigningPreview preview = SigningPreview.Of(Story42.History, Signature(DecisionKind.Advance, 10, new PlanPlace(1, 0)));

        Assert.Equal((new OutingMinutes(15), new OutingMinutes(25, 5)), (preview.Before.Work.Outing, preview.After.Work.Outing));
        Assert.True(preview.IsIncrease);
        Assert.Equal([], preview.Lacks);
    }

    [Fact]
    public void A_hold_is_no_increase() =>
        Assert.False(SigningPreview.Of(Story42.History, Signature(DecisionKind.Hold, 10, null)).IsIncrease);

    [Fact]
    public void What_keeps_a_signature_from_counting_is_told_before_it_is_signed()
    {
        SigningPreview preview = SigningPreview.Of(Story42.History, Signature(DecisionKind.Advance, 42, new PlanPlace(2, 0)));

        Assert.False(preview.IsIncrease);
        Assert.Equal([PermitReasonCode.DecisionWithoutExamination], preview.Lacks.Select(lack => lack.Code));
    }

    [Fact]
    public void A_signature_for_later_is_seen_on_its_day()
    {
        DecisionSigned later = Signature(DecisionKind.Stop, 20, null) with { RecordedOn = Story.Day(10) };

        Assert.Equal(Story.Day(20), SigningPreview.Of(Story42.History, later).After.Date);
    }

    [Fact]
    public void What_is_no_signature_has_no_preview() =>
        Assert.Throws<ArgumentException>(() => SigningPreview.Of(Story42.History, Story42.History.Entries[0]));
}
