using Microsoft.Extensions.Configuration;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Hosting;

public sealed class ListenAddressesTests
{
    [Theory]
    [InlineData("http://0.0.0.0:5080")]
    [InlineData("http://[::]:5080")]
    [InlineData("http://*:5080")]
    [InlineData("http://+:5080")]
    [InlineData("http://192.168.1.20:5080")]
    [InlineData("http://stable.example:5080")]
    [InlineData("http://localhost.example:5080")]
    [InlineData("https://[2001:db8::1]:5080")]
    [InlineData("http://unix:/run/rehabtrack.sock")]
    [InlineData("5080")]
    public void An_address_that_another_machine_could_reach_is_refused_with_its_name(string address)
    {
        StartRefusedException refused = Assert.Throws<StartRefusedException>(() =>
            ListenAddresses.Choose(With("urls", address), isDemo: true, hasProxy: true)
        );
        Assert.Contains(address, refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http://localhost:5081")]
    [InlineData("http://127.0.0.1:5081")]
    [InlineData("http://127.0.0.9:5081")]
    [InlineData("http://[::1]:5081")]
    [InlineData("https://LOCALHOST:5443")]
    public void An_address_of_this_machine_is_used(string address) =>
        Assert.Equal([address], ListenAddresses.Choose(With("urls", address), isDemo: true, hasProxy: true));

    [Fact]
    public void One_open_address_among_closed_ones_is_refused() =>
        Assert.Throws<StartRefusedException>(() =>
            ListenAddresses.Choose(With("urls", "http://localhost:5081; http://0.0.0.0:5082"), isDemo: true, hasProxy: true)
        );

    [Theory]
    [InlineData("http_ports", "8080")]
    [InlineData("https_ports", "8443")]
    [InlineData("Kestrel:Endpoints:Open:Url", "http://0.0.0.0:8080")]
    public void Every_other_way_to_name_an_open_address_is_refused_too(string setting, string value) =>
        Assert.Throws<StartRefusedException>(() => ListenAddresses.Choose(With(setting, value), isDemo: true, hasProxy: true));

    [Fact]
    public void Without_a_word_it_is_the_usual_address() =>
        Assert.Equal([ListenAddresses.Default], ListenAddresses.Choose(new ConfigurationBuilder().Build(), isDemo: false, hasProxy: false));

    [Theory]
    [InlineData("urls", "http://*:8080", "http://*:8080")]
    [InlineData("http_ports", "8080", "http://*:8080")]
    public void Where_people_sign_in_other_machines_may_reach_it_behind_a_proxy(string setting, string value, string address)
    {
        Assert.Equal([address], ListenAddresses.Choose(With(setting, value), isDemo: false, hasProxy: true));

        StartRefusedException refused = Assert.Throws<StartRefusedException>(() =>
            ListenAddresses.Choose(With(setting, value), isDemo: false, hasProxy: false)
        );
        Assert.Contains(address, refused.Message, StringComparison.Ordinal);
        Assert.Contains("Proxy:Networks", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("urls", "http://127.0.0.1:5080")]
    [InlineData("urls", "https://*:8443")]
    [InlineData("https_ports", "8443")]
    public void What_is_sealed_or_stays_on_this_machine_needs_no_proxy(string setting, string value) =>
        Assert.EndsWith(
            value,
            Assert.Single(ListenAddresses.Choose(With(setting, value), isDemo: false, hasProxy: false)),
            StringComparison.Ordinal
        );

    [Fact]
    public void An_open_endpoint_of_the_server_itself_is_refused_too() =>
        Assert.Throws<StartRefusedException>(() =>
            ListenAddresses.Choose(With("Kestrel:Endpoints:Open:Url", "http://0.0.0.0:8080"), isDemo: false, hasProxy: false)
        );

    [Theory]
    [InlineData("urls", "https://*:8443", true)]
    [InlineData("urls", "HTTPS://localhost:8443;https://*:8444", true)]
    [InlineData("urls", "https://*:8443;http://localhost:5080", false)]
    [InlineData("https_ports", "8443", true)]
    [InlineData("Kestrel:Endpoints:Own:Url", "https://*:8443", true)]
    [InlineData("Kestrel:Endpoints:Own:Url", "http://localhost:8080", false)]
    [InlineData("other", "", false)]
    public void Browsers_come_by_a_sealed_way_only_where_every_address_is_one(string setting, string value, bool isSealed)
    {
        IConfiguration configuration = With(setting, value);

        Assert.Equal(
            isSealed,
            ListenAddresses.AreSealed(configuration, ListenAddresses.Choose(configuration, isDemo: false, hasProxy: false))
        );
    }

    [Fact]
    public async Task A_start_on_an_open_address_ends_with_the_refusal() =>
        Assert.Equal(StartUp.Refused, await StartUp.RunAsync(["--demo", "--urls", "http://0.0.0.0:0"]));

    private static IConfiguration With(string setting, string value) =>
        new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?> { [setting] = value }).Build();
}
