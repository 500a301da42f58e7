using System.Globalization;
using System.Net;
using RehabTrack.Wording;

namespace RehabTrack.Web.Hosting;

/// <summary>
/// The addresses the server listens on: without a word one that only this machine can reach. Before anything listens, two are refused: every
/// open one of the demo, which lets in whoever asks; and one that others could reach over plain HTTP with no proxy before it that seals the way.
/// </summary>
public static class ListenAddresses
{
    /// <summary>Where the app answers when nobody says otherwise.</summary>
    public const string Default = "http://localhost:5080";

    private static readonly (string Setting, string Scheme)[] PortSettings = [("http_ports", "http"), ("https_ports", "https")];

    /// <summary>The addresses to listen on, from <c>--urls</c>, <c>ASPNETCORE_URLS</c>, the ports of the environment, or the default.</summary>
    /// <param name="configuration">The settings; addresses of Kestrel's own endpoints are looked at, and listened on by Kestrel.</param>
    /// <param name="isDemo">Whether it is the demo.</param>
    /// <param name="hasProxy">Whether proxies are named that may say who asked and how.</param>
    /// <exception cref="StartRefusedException">One of them is refused.</exception>
    public static IReadOnlyList<string> Choose(IConfiguration configuration, bool isDemo, bool hasProxy)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        string[] asked = [.. Words(configuration[WebHostDefaults.ServerUrlsKey])];
        if (asked.Length == 0)
        {
            // A port without an address means every address of the machine.
            asked =
            [
                .. PortSettings.SelectMany(port => Words(configuration[port.Setting]).Select(number => $"{port.Scheme}://*:{number}")),
            ];
        }

        foreach (string address in asked.Concat(Endpoints(configuration)))
        {
            Refuse(address, isDemo, hasProxy);
        }

        return asked.Length > 0 ? asked : [Default];
    }

    /// <summary>Whether every address that is listened on, those of Kestrel's own endpoints included, is one of TLS.</summary>
    public static bool AreSealed(IConfiguration configuration, IReadOnlyList<string> addresses)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        string[] own = [.. Endpoints(configuration)];
        // Kestrel listens on endpoints of its own instead of on the addresses.
        return (own.Length > 0 ? own : addresses).All(IsTls);
    }

    /// <summary>Whether only this machine can reach the address.</summary>
    public static bool IsLoopback(string address)
    {
        ArgumentNullException.ThrowIfNull(address);
        if (!Uri.TryCreate(address, UriKind.Absolute, out Uri? uri) || uri.Scheme is not ("http" or "https"))
        {
            return false;
        }

        string host = uri.Host.Trim('[', ']');
        return string.Equals(host, "localhost", StringComparison.OrdinalIgnoreCase)
            || (IPAddress.TryParse(host, out IPAddress? ip) && IPAddress.IsLoopback(ip));
    }

    private static IEnumerable<string> Endpoints(IConfiguration configuration) =>
        configuration.GetSection("Kestrel:Endpoints").GetChildren().Select(endpoint => endpoint["Url"] ?? endpoint.Path);

    private static bool IsTls(string address) => address.StartsWith("https://", StringComparison.OrdinalIgnoreCase);

    private static string[] Words(string? text) =>
        (text ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static void Refuse(string address, bool isDemo, bool hasProxy)
    {
        if (IsLoopback(address))
        {
            return;
        }

        if (isDemo)
        {
            throw new StartRefusedException(string.Format(CultureInfo.CurrentCulture, StartUpTexts.AddressNotLoopback, address, Default));
        }

        if (!hasProxy && !IsTls(address))
        {
            throw new StartRefusedException(string.Format(CultureInfo.CurrentCulture, StartUpTexts.AddressNotSealed, address, Default));
        }
    }
}
