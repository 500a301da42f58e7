using System.Globalization;
using System.Net;

namespace RehabTrack.Web.Hosting;

/// <summary>
/// The addresses the server listens on: without a word one that only this machine can reach. The demo, which lets in whoever asks, is refused
/// every other one before anything listens.
/// </summary>
public static class LoopbackAddresses
{
    /// <summary>Where the app answers when nobody says otherwise.</summary>
    public const string Default = "http://localhost:5080";

    private static readonly string[] PortSettings = ["http_ports", "https_ports"];

    /// <summary>The addresses to listen on, from <c>--urls</c>, <c>ASPNETCORE_URLS</c> or the default.</summary>
    /// <exception cref="StartRefusedException">It is the demo, and one of them can be reached from another machine, or is no address.</exception>
    public static IReadOnlyList<string> Choose(IConfiguration configuration, bool isDemo)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        if (!isDemo)
        {
            return Asked(configuration) is { Length: > 0 } wished ? wished : [Default];
        }

        foreach (IConfigurationSection endpoint in configuration.GetSection("Kestrel:Endpoints").GetChildren())
        {
            Refuse(endpoint["Url"] ?? endpoint.Path);
        }

        string[] asked = Asked(configuration);
        if (asked.Length == 0)
        {
            // A port without an address means every address of the machine: said aloud, not bent into something else.
            foreach (string setting in PortSettings)
            {
                if (!string.IsNullOrWhiteSpace(configuration[setting]))
                {
                    Refuse($"*:{configuration[setting]}");
                }
            }

            return [Default];
        }

        foreach (string address in asked)
        {
            Refuse(address);
        }

        return asked;
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

    private static string[] Asked(IConfiguration configuration) =>
        (configuration[WebHostDefaults.ServerUrlsKey] ?? "").Split(
            ';',
            StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
        );

    private static void Refuse(string address)
    {
        if (!IsLoopback(address))
        {
            throw new StartRefusedException(
                string.Format(CultureInfo.CurrentCulture, Wording.StartUpTexts.AddressNotLoopback, address, Default)
            );
        }
    }
}
