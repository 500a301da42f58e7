using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Room;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>Two people at one record: one types into a form, the other saves it meanwhile.</summary>
public static class TwoAtOnce
{
    /// <summary>Types or chooses, by whatever the control listens to.</summary>
    public static Task TypeAsync<TPage>(this IRenderedComponent<TPage> page, string field, object value)
        where TPage : IComponent
    {
        ArgumentNullException.ThrowIfNull(page);
        IElement control = page.Find($"#{field}");
        ChangeEventArgs typed = new() { Value = value };
        return control.HasAttribute("blazor:oninput") ? control.InputAsync(typed) : control.ChangeAsync(typed);
    }

    /// <summary>The other person does something, and it succeeds.</summary>
    public static async Task<TResult> DoneAsync<TUseCase, TInput, TResult>(this KeptPractice kept, TInput input)
        where TUseCase : UseCase<TInput, TResult>
    {
        ArgumentNullException.ThrowIfNull(kept);
        Outcome<TResult> outcome = await kept.Services.GetRequiredService<TUseCase>().ExecuteAsync(kept.Vet, input);
        Assert.True(outcome.Succeeded, string.Join(", ", outcome.Problems));
        return outcome.Value;
    }

    /// <summary>The form says who saved and when, and what of it was taken over.</summary>
    public static void AssertTaken<TPage>(this IRenderedComponent<TPage> page, string by, params string[] taken)
        where TPage : IComponent
    {
        ArgumentNullException.ThrowIfNull(page);
        IElement notice = page.Find(".met[role=alert]");
        string[] said = [by, Figures.Date(DateOnly.FromDateTime(KeptPractice.Morning.UtcDateTime))];
        foreach (string one in said)
        {
            Assert.Contains(one, notice.QuerySelector("strong")!.TextContent, StringComparison.Ordinal);
        }

        foreach (string one in taken)
        {
            Assert.Contains(one, notice.TextContent, StringComparison.Ordinal);
        }
    }

    /// <summary>Beside a field stands what each wrote, and nothing is chosen yet.</summary>
    public static void AssertAsks<TPage>(this IRenderedComponent<TPage> page, string field, string mine, string theirs)
        where TPage : IComponent
    {
        ArgumentNullException.ThrowIfNull(page);
        IElement choice = page.Find($"#{field}-mine").Closest("fieldset")!;
        IElement[] labels = [.. choice.QuerySelectorAll("label")];
        Assert.EndsWith(mine, labels[0].TextContent.Trim(), StringComparison.Ordinal);
        Assert.EndsWith(theirs, labels[1].TextContent.Trim(), StringComparison.Ordinal);
        Assert.DoesNotContain(choice.QuerySelectorAll("input"), radio => radio.HasAttribute("checked"));
    }

    /// <summary>Chooses what the other person saved, or what was typed here.</summary>
    public static Task ChooseAsync<TPage>(this IRenderedComponent<TPage> page, string field, bool theirs)
        where TPage : IComponent
    {
        ArgumentNullException.ThrowIfNull(page);
        return page.Find($"#{field}-{(theirs ? "theirs" : "mine")}").ChangeAsync(new ChangeEventArgs { Value = "on" });
    }
}
