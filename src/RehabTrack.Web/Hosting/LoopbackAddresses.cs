using System.Globalization;
using System.Net;

namespace RehabTrack.Web.Hosting;

/// <summary>
/// The addresses the server may listen on: those that only this machine can reach. Until sign-in asks for a password,
/// every other address is refused before anything listens.
/// </summary>
public static class LoopbackAddresses
{
    /// <summary>Where the app answers when nobody says otherwise.</summary>
    public const string Default = "http://localhost:5080";

    private static readonly string[] PortSettings = ["http_ports", "https_ports"];

    /// <summary>The addresses to listen on, from <c>--urls</c>, <c>ASPNETCORE_URLS</c> or the default.</summary>
    /// <exception cref="StartRefusedException">One of them can be reached from another machine, or is no address.</exception>
    public static IReadOnlyList<string> Choose(IConfiguration configuration)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        foreach (IConfigurationSection endpoint in configuration.GetSection("Kestrel:Endpoints").GetChildren())
        {
            Refuse(endpoint["Url"] ?? endpoint.Path);
        }

        string[] asked = (configuration[WebHostDefaults.ServerUrlsKey] ?? "").Split(
            ';',
            StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
        );
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
