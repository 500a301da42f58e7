using Bunit;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Web.Features.Examinations;
using RehabTrack.Web.Tests.Features.Cases;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Examinations;

public sealed class ChangeTableTests : IAsyncDisposable
{
    private readonly BunitContext _page = new();

    public ValueTask DisposeAsync() => _page.DisposeAsync();

    /// <summary>The second examination with the ligament of one level larger by a share; all levels, or that one alone.</summary>
    private IRenderedComponent<ChangeTable> Render(double rise, bool alone)
    {
        Examination[] examinations =
        [
            .. Invented
                .Course(2, shrink: 1)
                .Examinations.Select(
                    (examination, index) =>
                        examination with
                        {
                            Readings =
                            [
                                .. examination
                                    .Readings.Where(reading => !alone || reading.Level.Position.Value == 22)
                                    .Select(reading =>
                                        index == 1 && reading.Level.Position.Value == 22
                                            ? reading with
                                            {
                                                LigamentArea = new SquareCentimetres(1.4 * (1 + rise)),
                                            }
                                            : reading
                                    ),
                            ],
                        }
                ),
        ];
        CaseView injury = Invented.View(Invented.Course(1) with { Examinations = [examinations[0]] });
        EntryBackground background = new(injury, Invented.ExaminationId(2));
        return _page.Render<ChangeTable>(table =>
            table
                .Add(one => one.Case, injury)
                .Add(one => one.Background, background)
                .Add(one => one.Examination, examinations[1])
                .Add(one => one.Last, examinations[0])
        );
    }

    private static string LigamentAt22(IRenderedComponent<ChangeTable> table) =>
        table
            .FindAll("tbody tr")
            .Single(row => row.QuerySelector("th")!.TextContent.Contains("22", StringComparison.Ordinal))
            .QuerySelectorAll("td")
            .Single(cell => cell.GetAttribute("data-label") == "Ligament area")
            .TextContent.Replace('\u00a0', ' ');

    [Fact]
    public void A_change_that_one_level_alone_would_claim_is_not_claimed_among_five()
    {
        // A difference has an SD of some .11 on the log scale (cv 7 %, gain 3 %): 1.96 of them are 24 %, the 2.58 of five levels 33 %.
        IRenderedComponent<ChangeTable> together = Render(0.28, alone: false);

        Assert.Contains("up by more than the error", LigamentAt22(Render(0.28, alone: true)), StringComparison.Ordinal);
        Assert.Contains("cannot tell", LigamentAt22(together), StringComparison.Ordinal);
        Assert.Contains("5 levels are judged together here", together.Find("p.soft").TextContent, StringComparison.Ordinal);
        Assert.Contains("up by more than the error", LigamentAt22(Render(0.4, alone: false)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.09, null)]
    [InlineData(0.12, "up by more than 10 %")]
    [InlineData(0.28, "up by more than 20 %")]
    public void A_caution_about_the_ligament_is_never_held_back_by_the_error(double rise, string? caution)
    {
        IRenderedComponent<ChangeTable> table = Render(rise, alone: false);

        Assert.Contains("cannot tell", LigamentAt22(table), StringComparison.Ordinal);
        Assert.Equal(caution, table.FindAll(".mark").Select(mark => mark.TextContent.Replace('\u00a0', ' ')).SingleOrDefault());
        Assert.Equal(rise > 0.2 ? 1 : 0, table.FindAll(".mark.red").Count);
    }

    [Fact]
    public void One_level_alone_needs_no_word_about_others() =>
        Assert.DoesNotContain(ComparisonTexts.SeveralLevels[4..20], Render(0.28, alone: true).Markup, StringComparison.Ordinal);
}
