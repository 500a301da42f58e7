using Microsoft.Extensions.Configuration;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Hosting;

public sealed class LoopbackAddressesTests
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
            LoopbackAddresses.Choose(With("urls", address), isDemo: true)
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
        Assert.Equal([address], LoopbackAddresses.Choose(With("urls", address), isDemo: true));

    [Fact]
    public void One_open_address_among_closed_ones_is_refused() =>
        Assert.Throws<StartRefusedException>(() =>
            LoopbackAddresses.Choose(With("urls", "http://localhost:5081; http://0.0.0.0:5082"), isDemo: true)
        );

    [Theory]
    [InlineData("http_ports", "8080")]
    [InlineData("https_ports", "8443")]
    [InlineData("Kestrel:Endpoints:Open:Url", "http://0.0.0.0:8080")]
    public void Every_other_way_to_name_an_open_address_is_refused_too(string setting, string value) =>
        Assert.Throws<StartRefusedException>(() => LoopbackAddresses.Choose(With(setting, value), isDemo: true));

    [Fact]
    public void Without_a_word_it_is_the_usual_address() =>
        Assert.Equal([LoopbackAddresses.Default], LoopbackAddresses.Choose(new ConfigurationBuilder().Build(), isDemo: false));

    [Fact]
    public void Where_people_sign_in_other_machines_may_reach_it() =>
        Assert.Equal(["http://*:8080"], LoopbackAddresses.Choose(With("urls", "http://*:8080"), isDemo: false));

    [Fact]
    public async Task A_start_on_an_open_address_ends_with_the_refusal() =>
        Assert.Equal(StartUp.Refused, await StartUp.RunAsync(["--demo", "--urls", "http://0.0.0.0:0"]));

    private static IConfiguration With(string setting, string value) =>
        new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?> { [setting] = value }).Build();
}
