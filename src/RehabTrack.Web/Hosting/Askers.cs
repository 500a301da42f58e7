using System.Net;
using System.Net.Sockets;
using System.Threading.RateLimiting;

namespace RehabTrack.Web.Hosting;

/// <summary>Who asks, as limits count them, and how they count.</summary>
public static class Askers
{
    private const int NetworkBytes = 8;

    /// <summary>The time that most limits are given for.</summary>
    public static TimeSpan Minute { get; } = TimeSpan.FromMinutes(1);

    /// <summary>Whose questions are counted together: an address, and with IPv6 all addresses of a network.</summary>
    public static string NetworkOf(IPAddress? address) =>
        address switch
        {
            null => "",
            { IsIPv4MappedToIPv6: true } => address.MapToIPv4().ToString(),
            { AddressFamily: AddressFamily.InterNetworkV6 } => Convert.ToHexString(address.GetAddressBytes().AsSpan(0, NetworkBytes)),
            _ => address.ToString(),
        };

    /// <summary>So many in a time, counted anew when it is over.</summary>
    public static RateLimitPartition<TKey> Counted<TKey>(TKey key, int most, TimeSpan window) =>
        RateLimitPartition.GetFixedWindowLimiter(key, _ => new FixedWindowRateLimiterOptions { PermitLimit = most, Window = window });

    /// <summary>So many a minute for each network.</summary>
    public static PartitionedRateLimiter<IPAddress?> NetworksAMinute(int most) =>
        PartitionedRateLimiter.Create<IPAddress?, string>(address => Counted(NetworkOf(address), most, Minute));
}
