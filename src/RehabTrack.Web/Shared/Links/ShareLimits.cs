using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Threading.RateLimiting;
using RehabTrack.Records.Shares;

namespace RehabTrack.Web.Shared.Links;

/// <summary>How much one network address may ask behind share links: so many questions in a minute, and far fewer with a dead link.</summary>
public sealed class ShareLimits : IDisposable
{
    private const int NetworkBytes = 8;

    private readonly PartitionedRateLimiter<IPAddress?> _asked;
    private readonly PartitionedRateLimiter<IPAddress?> _wrong;

    /// <summary>With the limits of the table.</summary>
    public ShareLimits()
    {
        ShareSettings settings = new();
        _asked = AMinute(settings.AskedPerMinute);
        _wrong = AMinute(settings.WrongPerMinute);
    }

    /// <summary>The value of Retry-After.</summary>
    public static string RetryAfter { get; } = Window.TotalSeconds.ToString(CultureInfo.InvariantCulture);

    private static TimeSpan Window => TimeSpan.FromMinutes(1);

    /// <summary>Whether the address may ask now. Who has guessed too often may not, whatever the link: the difference would tell which one lives.</summary>
    public bool MayAsk(IPAddress? address)
    {
        using RateLimitLease guessing = _wrong.AttemptAcquire(address, 0);
        using RateLimitLease asking = _asked.AttemptAcquire(address);
        return guessing.IsAcquired && asking.IsAcquired;
    }

    /// <summary>Counts a dead link; false when there were too many.</summary>
    public bool CountWrong(IPAddress? address)
    {
        using RateLimitLease wrong = _wrong.AttemptAcquire(address);
        return wrong.IsAcquired;
    }

    /// <summary>Whose questions are counted together: an address, and with IPv6 all addresses of a network.</summary>
    public static string NetworkOf(IPAddress? address) =>
        address switch
        {
            null => "",
            { IsIPv4MappedToIPv6: true } => address.MapToIPv4().ToString(),
            { AddressFamily: AddressFamily.InterNetworkV6 } => Convert.ToHexString(address.GetAddressBytes().AsSpan(0, NetworkBytes)),
            _ => address.ToString(),
        };

    /// <inheritdoc />
    public void Dispose()
    {
        _asked.Dispose();
        _wrong.Dispose();
    }

    private static PartitionedRateLimiter<IPAddress?> AMinute(int most) =>
        PartitionedRateLimiter.Create<IPAddress?, string>(address =>
            RateLimitPartition.GetFixedWindowLimiter(
                NetworkOf(address),
                _ => new FixedWindowRateLimiterOptions { PermitLimit = most, Window = Window }
            )
        );
}
