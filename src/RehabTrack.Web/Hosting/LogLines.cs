using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Logging.Console;

namespace RehabTrack.Web.Hosting;

/// <summary>
/// One JSON object a line. Of what broke it tells kinds and places in the code, not what was said: a message may quote what a person typed.
/// Only disk and database speak for themselves. Scopes are left out, because they hold the paths that were asked for.
/// </summary>
public sealed class LogLines(TimeProvider time) : ConsoleFormatter(FormatName)
{
    /// <summary>The name of this format.</summary>
    public const string FormatName = "rehabtrack-json";

    private static readonly JsonWriterOptions OneLine = new() { Indented = false, Encoder = JavaScriptEncoder.Default };

    /// <inheritdoc />
    public override void Write<TState>(in LogEntry<TState> logEntry, IExternalScopeProvider? scopeProvider, TextWriter textWriter)
    {
        ArgumentNullException.ThrowIfNull(textWriter);
        using MemoryStream line = new();
        using (Utf8JsonWriter json = new(line, OneLine))
        {
            json.WriteStartObject();
            json.WriteString("at", time.GetUtcNow().UtcDateTime);
            json.WriteString("level", logEntry.LogLevel.ToString());
            json.WriteString("category", logEntry.Category);
            json.WriteNumber("event", logEntry.EventId.Id);
            json.WriteString("text", logEntry.Formatter(logEntry.State, null));
            if (logEntry.Exception is { } broken)
            {
                json.WriteStartArray("fault");
                for (Exception? inner = broken; inner is not null; inner = inner.InnerException)
                {
                    json.WriteStartObject();
                    json.WriteString("kind", inner.GetType().FullName);
                    if (inner is SqliteException or IOException)
                    {
                        json.WriteString("says", inner.Message);
                    }

                    json.WriteString("where", inner.StackTrace);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
            }

            json.WriteEndObject();
        }

        textWriter.WriteLine(Encoding.UTF8.GetString(line.ToArray()));
    }
}
