using System.Globalization;
using System.Net;
using System.Threading.RateLimiting;
using RehabTrack.Records.Shares;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Shared.Links;

/// <summary>How much one network address may ask behind share links: so many questions in a minute, and far fewer with a dead link.</summary>
public sealed class ShareLimits : IDisposable
{
    private readonly PartitionedRateLimiter<IPAddress?> _asked;
    private readonly PartitionedRateLimiter<IPAddress?> _wrong;

    /// <summary>With the limits of the table.</summary>
    public ShareLimits()
    {
        ShareSettings settings = new();
        _asked = Askers.NetworksAMinute(settings.AskedPerMinute);
        _wrong = Askers.NetworksAMinute(settings.WrongPerMinute);
    }

    /// <summary>The value of Retry-After.</summary>
    public static string RetryAfter { get; } = Askers.Minute.TotalSeconds.ToString(CultureInfo.InvariantCulture);

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

    /// <inheritdoc />
    public void Dispose()
    {
        _asked.Dispose();
        _wrong.Dispose();
    }
}
