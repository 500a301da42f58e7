using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Hosting;

public sealed class ProxySettingsTests
{
    [Theory]
    [InlineData("172.18.0.0/16", "172.18.0.5", "198.51.100.9", "https")]
    [InlineData("172.18.0.0/16;10.0.0.0/8", "10.1.2.3", "198.51.100.9", "https")]
    [InlineData("172.18.0.0/16", "203.0.113.4", "203.0.113.4", "http")]
    [InlineData(null, "172.18.0.5", "172.18.0.5", "http")]
    public async Task Only_a_proxy_of_a_named_network_says_who_asked(string? networks, string from, string seen, string scheme)
    {
        await using ServiceProvider services = new ServiceCollection().AddLogging().AddOptions().BuildServiceProvider();
        ApplicationBuilder app = new(services);
        ProxySettings.Use(app, ProxySettings.Networks(Said("Proxy:Networks", networks)));
        app.Run(_ => Task.CompletedTask);
        DefaultHttpContext context = new() { RequestServices = services };
        context.Connection.RemoteIpAddress = IPAddress.Parse(from);
        context.Request.Scheme = "http";
        context.Request.Headers["X-Forwarded-For"] = "192.0.2.1, 198.51.100.9";
        context.Request.Headers["X-Forwarded-Proto"] = "https";

        await app.Build()(context);

        Assert.Equal((seen, scheme), (context.Connection.RemoteIpAddress.ToString(), context.Request.Scheme));
    }

    [Theory]
    [InlineData("everybody")]
    [InlineData("172.18.0.0/64")]
    public void What_is_no_network_stops_the_start_with_a_sentence(string text)
    {
        StartRefusedException refused = Assert.Throws<StartRefusedException>(() => ProxySettings.Networks(Said("Proxy:Networks", text)));
        Assert.Contains(text, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void It_answers_to_the_names_that_are_said_and_to_this_machine_and_never_to_all() =>
        Assert.Equal(["localhost", "127.0.0.1", "[::1]", "rehab.example"], ProxySettings.Hosts(Said("AllowedHosts", "rehab.example; *")));

    private static IConfiguration Said(string name, string? value) =>
        new ConfigurationBuilder().AddInMemoryCollection([KeyValuePair.Create(name, value)]).Build();
}
