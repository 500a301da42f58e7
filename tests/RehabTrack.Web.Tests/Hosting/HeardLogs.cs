using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>Hears all lines that get through the filters of the log.</summary>
/// <param name="withScopes">Whether it also hears what lines stand under, which the program's own log does not write.</param>
public sealed class HeardLogs(bool withScopes = false) : ILoggerProvider, ILogger
{
    public ConcurrentQueue<string> Lines { get; } = new();

    public ILogger CreateLogger(string categoryName) => this;

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull
    {
        if (withScopes)
        {
            Lines.Enqueue(state.ToString() ?? "");
        }

        return null;
    }

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(
        LogLevel logLevel,
        EventId eventId,
        TState state,
        Exception? exception,
        Func<TState, Exception?, string> formatter
    ) => Lines.Enqueue($"{formatter(state, exception)} {exception}");

    public void Dispose() => Lines.Clear();
}
