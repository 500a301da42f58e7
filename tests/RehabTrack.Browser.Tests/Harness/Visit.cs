using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace RehabTrack.Browser.Tests.Harness;

/// <summary>A person at one window. It keeps every complaint of the browser, so that a test can ask for none.</summary>
public sealed class Visit : IAsyncDisposable
{
    private readonly ConcurrentQueue<string> _complaints = new();
    private readonly bool _ownsContext;

    /// <param name="page">The window.</param>
    /// <param name="ownsContext">Whether cookies and cache end with the window, or belong to windows that follow.</param>
    public Visit(IPage page, bool ownsContext = true)
    {
        _ownsContext = ownsContext;
        Page = page;
        page.Console += (_, message) =>
        {
            if (message.Type is "error")
            {
                _complaints.Enqueue($"console at {page.Url}: {message.Text}");
            }
        };
        page.PageError += (_, error) => _complaints.Enqueue($"script at {page.Url}: {error}");
        page.Response += (_, response) =>
        {
            if (response.Status >= 400)
            {
                _complaints.Enqueue($"{response.Status} for {response.Url}");
            }
        };
    }

    public IPage Page { get; }

    /// <summary>Console errors, script errors and failed answers since the window was opened.</summary>
    public IReadOnlyCollection<string> Complaints => _complaints;

    /// <summary>Opens a live page and waits until the server hears its clicks and keys.</summary>
    public async Task OpenAsync(string path)
    {
        await Page.GotoAsync(path);
        await WaitUntilLiveAsync();
    }

    /// <summary>Signs in as the first person of a role.</summary>
    public async Task SignInAsync(string role)
    {
        await Page.GotoAsync("/sign-in");
        await Page.Locator($"button[data-role={role}]").First.ClickAsync();
        await WaitUntilInsideAsync();
    }

    /// <summary>Signs in as a person of the demo.</summary>
    public async Task SignInByNameAsync(string person)
    {
        await Page.GotoAsync("/sign-in");
        await Page.GetByRole(AriaRole.Button, new() { Name = person }).ClickAsync();
        await WaitUntilInsideAsync();
    }

    // The answer of the door has set the cookie; whoever goes on waits for what they need. The address is asked for until it is another one: a
    // small page can be whole before anybody listens for its coming.
    private Task WaitUntilInsideAsync() =>
        Assertions.Expect(Page).Not.ToHaveURLAsync(new Regex("/sign-in"), new PageAssertionsToHaveURLOptions { Timeout = 30_000 });

    /// <summary>Opens a page that needs no live connection.</summary>
    public Task OpenStaticAsync(string path) => Page.GotoAsync(path);

    public Task WaitUntilLiveAsync() => Page.Locator("[data-interactive=true]").WaitForAsync();

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        if (_ownsContext)
        {
            await Page.Context.CloseAsync();
        }
        else
        {
            await Page.CloseAsync();
        }
    }
}
