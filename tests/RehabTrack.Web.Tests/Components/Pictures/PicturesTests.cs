using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components.Web;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Web.Components.Pictures;

namespace RehabTrack.Web.Tests.Components.Pictures;

public sealed class PicturesTests : IAsyncDisposable
{
    private readonly BunitContext _context = new();

    public PicturesTests() => _context.JSInterop.SetupModule("./pictures.js").Mode = JSRuntimeMode.Loose;

    public ValueTask DisposeAsync() => _context.DisposeAsync();

    [Theory]
    [InlineData(".desk-only")]
    [InlineData(".phone-only")]
    public void A_pressed_rung_names_its_place(string drawing)
    {
        PlaceKey? chosen = null;
        IRenderedComponent<Ladder> ladder = Render(place => chosen = place);
        RungOf(ladder, drawing, 4, "24").Click();
        Assert.Equal(new PlaceKey(FollowedCase.IdOf(4), LinkPath.Axial, new RehabTrack.Rechecks.Quantities.Centimetres(24)), chosen);
    }

    [Theory]
    [InlineData("Enter", true)]
    [InlineData(" ", true)]
    [InlineData("a", false)]
    [InlineData("Tab", false)]
    public void Enter_and_space_press_a_rung_and_other_keys_do_not(string key, bool presses)
    {
        PlaceKey? chosen = null;
        IRenderedComponent<Ladder> ladder = Render(place => chosen = place);
        RungOf(ladder, ".desk-only", 2, "22").KeyDown(new KeyboardEventArgs { Key = key });
        Assert.Equal(presses, chosen is not null);
    }

    [Fact]
    public void The_chosen_place_is_pressed_in_the_drawing_and_stays_the_same_element()
    {
        IRenderedComponent<Ladder> ladder = Render(_ => { });
        string track = RungOf(ladder, ".desk-only", 1, "24").GetAttribute("data-track")!;
        Assert.Null(RungOf(ladder, ".desk-only", 1, "24").GetAttribute("aria-pressed"));
        ladder.Render(parameters =>
            parameters.Add(each => each.ChosenTrack, track).Add(each => each.ChosenExaminations, [FollowedCase.IdOf(1)])
        );
        Assert.Equal("true", RungOf(ladder, ".desk-only", 1, "24").GetAttribute("aria-pressed"));
        Assert.Single(ladder.FindAll(".desk-only .rung.chosen"));
    }

    [Fact]
    public void A_ladder_that_nobody_listens_to_cannot_be_pressed()
    {
        IRenderedComponent<Ladder> ladder = _context.Render<Ladder>(parameters =>
            parameters.Add(each => each.Course, FollowedCase.Course).Add(each => each.Analysis, FollowedCase.Analysis)
        );
        Assert.Empty(ladder.FindAll("[role=button]"));
        Assert.Equal(2, ladder.FindAll("svg[role=img]").Count);
    }

    [Fact]
    public void The_window_of_the_phone_moves_to_earlier_examinations_and_back()
    {
        IRenderedComponent<Ladder> ladder = Render(_ => { });
        Assert.Equal([2, 3, 4], ShownOnPhone());
        IElement Earlier() => ladder.FindAll(".phone-only button")[0];
        IElement Later() => ladder.FindAll(".phone-only button")[1];
        Assert.True(Later().HasAttribute("disabled"));
        Earlier().Click();
        Assert.Equal([1, 2, 3], ShownOnPhone());
        Earlier().Click();
        Assert.Equal([0, 1, 2], ShownOnPhone());
        Assert.True(Earlier().HasAttribute("disabled"));
        Later().Click();
        Assert.Equal([1, 2, 3], ShownOnPhone());

        int[] ShownOnPhone() =>
            [.. Enumerable.Range(0, 5).Where(i => ladder.FindAll($".phone-only .rung[data-examination={FollowedCase.IdOf(i)}]").Count > 0)];
    }

    [Fact]
    public void The_table_behind_the_ladder_has_a_row_for_every_place()
    {
        IRenderedComponent<Ladder> ladder = Render(_ => { });
        Assert.Equal(20, ladder.FindAll("details tbody tr").Count);
        Assert.Contains("1.50", ladder.Find("details tbody").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_two_drawings_of_a_ladder_share_no_id()
    {
        IRenderedComponent<Ladder> ladder = Render(_ => { });
        string[] ids = [.. ladder.FindAll("[id]").Select(element => element.Id!)];
        Assert.NotEmpty(ids);
        Assert.Equal(ids.Length, ids.Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void A_pressed_point_of_the_healing_picture_names_its_examination()
    {
        string? chosen = null;
        IRenderedComponent<HealingPicture> healing = _context.Render<HealingPicture>(parameters =>
            parameters
                .Add(each => each.Course, FollowedCase.Course)
                .Add(each => each.Analysis, FollowedCase.Analysis)
                .Add(each => each.Chosen, examination => chosen = examination)
        );
        Assert.Equal(5, healing.FindAll(".desk-only .point").Count);
        healing.Find($".desk-only .point[data-examination={FollowedCase.IdOf(3)}]").Click();
        Assert.Equal(FollowedCase.IdOf(3), chosen);
        Assert.Equal(5, healing.FindAll("details tbody tr").Count);
    }

    [Fact]
    public void A_comparison_is_an_image_that_shows_both_figures_of_every_size()
    {
        IReadOnlyList<TrackStep> steps = FollowedCase
            .Analysis.Links.Tracks.Single(track => track.Steps[0].Place.Level.Position.Value.Equals(24))
            .Steps;
        IRenderedComponent<ComparisonPicture> comparison = _context.Render<ComparisonPicture>(parameters =>
            parameters
                .Add(each => each.Before, steps[0])
                .Add(each => each.Now, steps[^1])
                .Add(
                    each => each.Changes,
                    PlaceComparison.Between(
                        steps[0].Place,
                        steps[^1].Place,
                        FollowedCase.Analysis.Settings.Error,
                        FollowedCase.Course.Limb,
                        ComparisonFactors.AnyTwo(4)
                    )
                )
        );
        Assert.Single(comparison.FindAll("svg[role=img]"));
        Assert.Empty(comparison.FindAll("[role=button]"));
        Assert.Equal(3, comparison.FindAll("g.size").Count);
        Assert.Contains("0.60\u00a0cm²", comparison.Find("svg").TextContent, StringComparison.Ordinal);
        Assert.Contains("0.18\u00a0cm²", comparison.Find("svg").TextContent, StringComparison.Ordinal);
    }

    private IRenderedComponent<Ladder> Render(Action<PlaceKey> chosen) =>
        _context.Render<Ladder>(parameters =>
            parameters
                .Add(each => each.Course, FollowedCase.Course)
                .Add(each => each.Analysis, FollowedCase.Analysis)
                .Add(each => each.Chosen, chosen)
        );

    private static IElement RungOf(IRenderedComponent<Ladder> ladder, string drawing, int examination, string level) =>
        ladder.Find($"{drawing} .rung[data-examination={FollowedCase.IdOf(examination)}][data-level='{level}']");
}
