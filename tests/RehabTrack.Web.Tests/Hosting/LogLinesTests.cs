using System.Text.Json;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Hosting;

public sealed class LogLinesTests
{
    [Fact]
    public void A_line_is_one_object_with_time_in_UTC_and_what_broke_without_what_was_typed()
    {
        LoggerExternalScopeProvider scopes = new();
        using IDisposable scope = scopes.Push("RequestPath:/calendar/secret-of-the-practice");
        InvalidOperationException broken = new("Silent Grey is lame.", new IOException("No space left on device"));

        JsonElement line = Write(
            new LogEntry<string>(LogLevel.Error, "RehabTrack.Web", 7, "said\nin two lines", broken, (state, _) => state),
            scopes
        );

        Assert.Equal("2026-11-25T08:00:00Z", line.GetProperty("at").GetString());
        Assert.Equal("said\nin two lines", line.GetProperty("text").GetString());
        JsonElement[] faults = [.. line.GetProperty("fault").EnumerateArray()];
        Assert.Equal("System.InvalidOperationException", faults[0].GetProperty("kind").GetString());
        Assert.Equal("No space left on device", faults[1].GetProperty("says").GetString());
        Assert.DoesNotContain("Silent Grey", line.GetRawText(), StringComparison.Ordinal);
        Assert.DoesNotContain("secret-of-the-practice", line.GetRawText(), StringComparison.Ordinal);
    }

    private static JsonElement Write(LogEntry<string> entry, IExternalScopeProvider scopes)
    {
        using StringWriter written = new();
        new LogLines(new FakeTimeProvider(KeptPractice.Morning)).Write(in entry, scopes, written);
        string text = written.ToString();
        Assert.Equal(1, text.Count(letter => letter == '\n'));
        return JsonDocument.Parse(text).RootElement;
    }
}
