using System.Globalization;
using Microsoft.AspNetCore.HttpOverrides;
using RehabTrack.Wording;
using IPNetwork = System.Net.IPNetwork;

namespace RehabTrack.Web.Hosting;

/// <summary>What stands between the server and its readers: proxies that may say who asked, and the names the server answers to.</summary>
public static class ProxySettings
{
    private static readonly string[] Loopback = ["localhost", "127.0.0.1", "[::1]"];

    /// <summary>The networks whose proxies are believed, from <c>Proxy:Networks</c>; none when nothing is said.</summary>
    /// <exception cref="StartRefusedException">One of them is no network.</exception>
    public static IReadOnlyList<IPNetwork> Networks(IConfiguration configuration)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        return [.. Words(configuration["Proxy:Networks"]).Select(Network)];
    }

    /// <summary>The host names the server answers to: those of this machine, and those of <c>AllowedHosts</c>. Not every name, whatever is said.</summary>
    public static IReadOnlyList<string> Hosts(IConfiguration configuration)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        return [.. Loopback, .. Words(configuration["AllowedHosts"]).Where(name => name != "*")];
    }

    /// <summary>Believes one proxy of these networks who asked and how, and nobody else.</summary>
    public static void Use(IApplicationBuilder app, IReadOnlyList<IPNetwork> networks)
    {
        ArgumentNullException.ThrowIfNull(networks);
        if (networks.Count == 0)
        {
            return;
        }

        ForwardedHeadersOptions believed = new() { ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto };
        believed.KnownProxies.Clear();
        believed.KnownIPNetworks.Clear();
        foreach (IPNetwork network in networks)
        {
            believed.KnownIPNetworks.Add(network);
        }

        app.UseForwardedHeaders(believed);
    }

    private static IPNetwork Network(string text) =>
        IPNetwork.TryParse(text, out IPNetwork network)
            ? network
            : throw new StartRefusedException(string.Format(CultureInfo.InvariantCulture, StartUpTexts.ProxyNetworkUnreadable, text));

    private static string[] Words(string? text) =>
        (text ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
