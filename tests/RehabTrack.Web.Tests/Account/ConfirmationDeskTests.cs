using Bunit;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Web.Account;
using RehabTrack.Web.Shell;
using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.Account;

/// <summary>One question at a time: what else asks meanwhile is given up, and a page that is left takes its question along.</summary>
public sealed class ConfirmationDeskTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task While_a_question_stands_a_second_press_is_given_up_and_the_first_goes_on()
    {
        await using BunitContext tab = kept.Tab();
        ConfirmationDesk desk = tab.Services.GetRequiredService<ConfirmationDesk>();
        IRenderedComponent<ConfirmationQuestion> question = tab.Render<ConfirmationQuestion>();
        Task<bool> first = desk.AskAsync(kept.Vet, CancellationToken.None);

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => desk.AskAsync(kept.Vet, CancellationToken.None));

        question.WaitForElement("dialog");
        Assert.Single(question.FindAll("#confirm-password"));
        Assert.False(first.IsCompleted);
        desk.Cancel();
        Assert.False(await first);
        Assert.False(desk.IsAsking);
    }

    [Fact]
    public async Task A_page_that_is_left_takes_its_question_along_and_the_next_one_can_ask()
    {
        await using BunitContext tab = kept.Tab();
        ConfirmationDesk desk = tab.Services.GetRequiredService<ConfirmationDesk>();
        IRenderedComponent<ConfirmationQuestion> question = tab.Render<ConfirmationQuestion>();
        using CancellationTokenSource leaving = new();
        Task<bool> left = desk.AskAsync(kept.Vet, leaving.Token);
        question.WaitForElement("dialog");

        await leaving.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => left);
        question.WaitForState(() => question.FindAll("dialog").Count == 0);
        Task<bool> next = desk.AskAsync(kept.Vet, CancellationToken.None);
        question.WaitForElement("dialog");
        desk.Cancel();
        Assert.False(await next);
    }
}
