using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.OwnError;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.OwnError;

/// <summary>The error of the table is taken back while somebody else changes the practice.</summary>
public sealed class SharedErrorTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task The_page_shows_what_it_would_move_now_and_the_next_press_takes_it()
    {
        MeasuredSize size = ErrorCv.Sizes[0];
        double usual = ErrorCv.Of(new MeasurementErrorSettings(), size);
        await ChangeAsync(practice => practice with { Settings = WithError(practice, size, 2 * usual) });
        await using BunitContext tab = kept.Tab();
        tab.Services.GetRequiredService<NavigationManager>().NavigateTo($"/practice/measurement-error?take={size}&from=table");
        IRenderedComponent<OwnErrorEditor> page = tab.Render<OwnErrorEditor>();
        await ChangeAsync(practice => practice with { Phone = "0043 1 999" });

        await page.Find("section[aria-labelledby=moves] button").ClickAsync(new());

        Assert.Equal(OwnErrorPage.MovedMeanwhile, page.Find("[role=status] .notice").TextContent);
        Assert.Equal(2 * usual, await CvAsync(size));
        await page.Find("section[aria-labelledby=moves] button").ClickAsync(new());
        Assert.Equal(usual, await CvAsync(size));
    }

    private static Rechecks.Analysis.AnalysisSettings WithError(ChangePracticeInput practice, MeasuredSize size, double cv)
    {
        Rechecks.Analysis.AnalysisSettings settings = practice.Settings ?? new Rechecks.Analysis.AnalysisSettings();
        return settings with { Error = ErrorCv.With(settings.Error, size, cv) };
    }

    private async Task ChangeAsync(Func<ChangePracticeInput, ChangePracticeInput> change) =>
        await kept.DoneAsync<ChangePractice, ChangePracticeInput, Saved>(
            change(ChangePracticeInput.Of(await kept.DoneAsync<GetPractice, NoInput, PracticeView>(NoInput.Value), Guid.NewGuid()))
        );

    private async Task<double> CvAsync(MeasuredSize size) =>
        ErrorCv.Of((await kept.DoneAsync<GetPractice, NoInput, PracticeView>(NoInput.Value)).Settings.Error, size);
}
