using Bunit;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Shared.Yard;
using RehabTrack.Web.Tests.Features.Cases;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Shared;

public sealed class PermitSheetTests : IAsyncDisposable
{
    private static readonly DateOnly Sunday = new(2026, 11, 8);

    private readonly BunitContext _page = new();

    public ValueTask DisposeAsync() => _page.DisposeAsync();

    [Fact]
    public void A_day_of_rest_in_a_week_of_signed_work_says_why_and_asks_nobody_to_call()
    {
        string rest = Render(
            PlanRows.At(Hosting.HorseInRehab.Plan, PlanPlace.Start),
            new PermitReason(PermitReasonCode.RestDay) { Done = 5, Most = 5 }
        );

        Assert.Contains("5 of 5 days of this week are done: today the horse rests.", rest, StringComparison.Ordinal);
        Assert.DoesNotContain(OutsidePages.NoOlderSheet, rest, StringComparison.Ordinal);
    }

    [Fact]
    public void A_day_for_which_no_work_is_signed_asks_to_call()
    {
        string none = Render(Work.None, new PermitReason(PermitReasonCode.Stopped) { Since = Sunday });

        Assert.Contains(OutsidePages.NoOlderSheet, none, StringComparison.Ordinal);
    }

    private string Render(Work beforeWeek, PermitReason reason) =>
        _page
            .Render<PermitSheet>(sheet =>
                sheet
                    .Add(
                        one => one.Horse,
                        new YardHorse
                        {
                            Id = Guid.CreateVersion7(),
                            Name = "Teasel",
                            Markings = null,
                            Limbs = [],
                            HasPhoto = false,
                            Yard = null,
                            Permit = new Permit
                            {
                                Date = Sunday,
                                State = PermitState.Live,
                                Work = Work.None,
                                BeforeWeek = beforeWeek,
                                SignedWork = beforeWeek,
                                Reasons = [reason],
                                VoidAfter = Sunday,
                            },
                            LoggedToday = [],
                            Concern = null,
                            Release = YardRelease.None,
                            Recheck = null,
                        }
                    )
                    .Add(one => one.Practice, Invented.View(Invented.Course()).Practice)
            )
            .Markup;
}
