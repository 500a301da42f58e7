using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;

namespace RehabTrack.Browser.Tests.Harness;

/// <summary>
/// A line between browser and app that can be cut. What is open breaks off and what is tried fails, as it does where the network goes; the
/// browser's own switch leaves an open WebSocket alone.
/// </summary>
public sealed class CutLine : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly ConcurrentDictionary<TcpClient, byte> _open = [];
    private readonly CancellationTokenSource _end = new();
    private readonly Uri _app;
    private readonly Task _accepting;
    private volatile bool _isCut;
    private volatile bool _isSilent;

    /// <param name="app">The app at the other end.</param>
    public CutLine(RunningApp app)
    {
        _app = new Uri(app.Address);
        _listener.Start();
        _accepting = AcceptAsync();
    }

    /// <summary>Where the app answers through this line, without a slash at the end.</summary>
    public string Address => $"http://127.0.0.1:{((IPEndPoint)_listener.LocalEndpoint).Port}";

    /// <summary>What is sent arrives nowhere, and neither end can know yet: so it is in the first moments after a network went.</summary>
    public void Silence() => _isSilent = true;

    /// <summary>The network goes.</summary>
    public void Cut()
    {
        _isCut = true;
        foreach (TcpClient client in _open.Keys)
        {
            client.Dispose();
        }
    }

    /// <summary>The network is back.</summary>
    public void Mend() => _isCut = _isSilent = false;

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        Cut();
        _listener.Stop();
        await _accepting;
        _end.Dispose();
    }

    private async Task AcceptAsync()
    {
        List<Task> carried = [];
        try
        {
            while (true)
            {
                carried.Add(CarryAsync(await _listener.AcceptTcpClientAsync(_end.Token)));
            }
        }
        catch (Exception ended) when (ended is OperationCanceledException or SocketException or ObjectDisposedException)
        {
            await Task.WhenAll(carried);
        }
    }

    private async Task CarryAsync(NetworkStream from, NetworkStream to)
    {
        byte[] buffer = new byte[64 * 1024];
        while (await from.ReadAsync(buffer, _end.Token) is > 0 and var count)
        {
            if (!_isSilent)
            {
                await to.WriteAsync(buffer.AsMemory(0, count), _end.Token);
            }
        }
    }

    private async Task CarryAsync(TcpClient browser)
    {
        using TcpClient app = new();
        _open.TryAdd(browser, 0);
        _open.TryAdd(app, 0);
        try
        {
            if (!_isCut)
            {
                await app.ConnectAsync(_app.Host, _app.Port, _end.Token);
                Task there = CarryAsync(browser.GetStream(), app.GetStream());
                Task back = CarryAsync(app.GetStream(), browser.GetStream());
                await Task.WhenAny(there, back);
                browser.Dispose();
                app.Dispose();
                await Task.WhenAll(there, back);
            }
        }
        catch (Exception broken)
            when (broken
                    is IOException
                        or SocketException
                        or ObjectDisposedException
                        or OperationCanceledException
                        or InvalidOperationException
            )
        {
            // The line broke, or was cut: that is what it is for.
        }
        finally
        {
            _open.TryRemove(browser, out _);
            _open.TryRemove(app, out _);
            browser.Dispose();
        }
    }
}
