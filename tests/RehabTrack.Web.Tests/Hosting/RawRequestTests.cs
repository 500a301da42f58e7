using System.Net;
using System.Net.Sockets;
using System.Text;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>Requests that no browser sends.</summary>
public sealed class RawRequestTests(RunningApp app) : IClassFixture<RunningApp>
{
    /// <summary>Two ends of one message let a proxy and a server read it differently: RFC 9112, 6.3; OWASP ASVS 5.0, 4.2.1 (both from memory).</summary>
    [Theory]
    [InlineData("Content-Length: 5\r\nContent-Length: 6\r\n\r\nhello")]
    [InlineData("Content-Length: 5, 6\r\n\r\nhello")]
    [InlineData("Content-Length: -1\r\n\r\n")]
    [InlineData("Transfer-Encoding: gzip, chunked, gzip\r\n\r\n0\r\n\r\n")]
    [InlineData("Transfer-Encoding: chunked\r\n\r\nzz\r\n\r\n")]
    public async Task A_message_whose_end_is_not_clear_is_refused(string rest)
    {
        // All that is answered until the line is closed, which it has to be: what came behind the end could be taken for the next message.
        string answer = await AskAsync($"POST /sign-in HTTP/1.1\r\nHost: {app.Address.Authority}\r\n{rest}");

        Assert.StartsWith("HTTP/1.1 4", answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("GET /sign-in HTTP/1.1\r\nHost: one.example\r\nHost: two.example\r\n\r\n")]
    [InlineData("GET /sign-in HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Word: a\0b\r\n\r\n")]
    [InlineData("GET /sign-in HTTP/1.1\r\nHost : 127.0.0.1\r\n\r\n")]
    [InlineData("GET /sign-in\tHTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n")]
    public async Task A_head_that_can_be_read_in_two_ways_is_refused(string head) =>
        Assert.StartsWith("HTTP/1.1 400", await AskAsync(head), StringComparison.Ordinal);

    /// <summary>OWASP ASVS 5.0, 16.3.3 (from memory).</summary>
    [Fact]
    public async Task What_was_refused_stands_in_the_log_with_its_kind_and_without_what_was_asked_for()
    {
        using HeardLogs heard = new();
        app.Services.GetRequiredService<ILoggerFactory>().AddProvider(heard);
        using HttpClient browser = await app.BrowserAsync(app.Vet);

        using HttpResponseMessage form = await browser.PostAsync("/horses/0199a0a0-0000-7000-8000-000000000001/photo?secret=word", null);
        using HttpClient trainer = await app.BrowserAsync(app.Trainer);
        using HttpResponseMessage page = await trainer.GetAsync("/horses?secret=word");
        using HttpResponseMessage seen = await browser.GetAsync("/horses?secret=word");

        Assert.Equal(
            (HttpStatusCode.BadRequest, HttpStatusCode.Forbidden, HttpStatusCode.OK),
            (form.StatusCode, page.StatusCode, seen.StatusCode)
        );
        Assert.Equal(
            ["Refused 400 POST /horses/{id:guid}/photo ", "Refused 403 GET /horses "],
            heard.Lines.Where(line => line.StartsWith("Refused", StringComparison.Ordinal))
        );
        Assert.DoesNotContain(
            heard.Lines,
            line => line.Contains("word", StringComparison.Ordinal) || line.Contains("0199a0a0", StringComparison.Ordinal)
        );
    }

    private async Task<string> AskAsync(string request)
    {
        using TcpClient line = new();
        await line.ConnectAsync(IPAddress.Loopback, app.Address.Port);
        NetworkStream stream = line.GetStream();
        await stream.WriteAsync(Encoding.Latin1.GetBytes(request));
        using StreamReader reader = new(stream, Encoding.Latin1);
        return await reader.ReadToEndAsync().WaitAsync(TimeSpan.FromMinutes(1));
    }
}
