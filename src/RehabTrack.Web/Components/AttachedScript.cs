using Microsoft.JSInterop;

namespace RehabTrack.Web.Components;

/// <summary>
/// The script of a component: loaded and attached once the component is drawn, detached when it is left, and never in the way when the
/// component is left before its script came, or the browser went first.
/// </summary>
/// <param name="runtime">The browser.</param>
/// <param name="path">Where the script lies; it exports <c>attach</c>.</param>
internal sealed class AttachedScript(IJSRuntime runtime, string path) : IAsyncDisposable
{
    private IJSObjectReference? _module;
    private IJSObjectReference? _attached;
    private bool _isLeft;

    /// <summary>Attaches it.</summary>
    /// <param name="arguments">What <c>attach</c> takes.</param>
    /// <returns>Whether there is still something to attach to.</returns>
    public async Task<bool> AttachAsync(params object?[] arguments)
    {
        try
        {
            _module = await runtime.InvokeAsync<IJSObjectReference>("import", path);
            _attached = await _module.InvokeAsync<IJSObjectReference>("attach", arguments);
            return !_isLeft;
        }
        catch (Exception left) when (_isLeft && left is JSException or ObjectDisposedException)
        {
            // Back and forward again, faster than the script came.
            return false;
        }
    }

    /// <summary>Asks what is attached; nothing while nothing is.</summary>
    /// <param name="name">The method of what <c>attach</c> gave.</param>
    /// <param name="arguments">What it takes.</param>
    public async Task AskAsync(string name, params object?[] arguments) => await AskAsync<object?>(name, arguments);

    /// <summary>Asks what is attached for an answer; the default while nothing is.</summary>
    /// <param name="name">The method of what <c>attach</c> gave.</param>
    /// <param name="arguments">What it takes.</param>
    public async Task<TAnswer?> AskAsync<TAnswer>(string name, params object?[] arguments)
    {
        try
        {
            return _attached is null ? default : await _attached.InvokeAsync<TAnswer?>(name, arguments);
        }
        catch (Exception left) when (_isLeft && left is JSException or ObjectDisposedException)
        {
            return default;
        }
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        _isLeft = true;
        try
        {
            if (_attached is not null)
            {
                await _attached.InvokeVoidAsync("detach");
                await _attached.DisposeAsync();
            }

            if (_module is not null)
            {
                await _module.DisposeAsync();
            }
        }
        catch (JSDisconnectedException)
        {
            // The browser has gone, and its listeners with it.
        }
    }
}
