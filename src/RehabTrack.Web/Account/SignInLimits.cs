using System.Net;
using System.Threading.RateLimiting;
using RehabTrack.Records.Accounts;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Account;

/// <summary>How often a network address may try to come in, and how often a browser that an account knows may mistype.</summary>
public sealed class SignInLimits : IDisposable
{
    private static readonly SignInSettings Settings = new();

    private readonly PartitionedRateLimiter<IPAddress?> _addresses = Askers.NetworksAMinute(Settings.TriesPerMinute);

    private readonly PartitionedRateLimiter<Guid> _browsers = PartitionedRateLimiter.Create<Guid, Guid>(browser =>
        Askers.Counted(browser, Settings.TriesOfKnownBrowser, Settings.LockTime)
    );

    /// <summary>Counts a try of a network address; false when there were too many.</summary>
    public bool MayTry(IPAddress? address)
    {
        using RateLimitLease lease = _addresses.AttemptAcquire(address);
        return lease.IsAcquired;
    }

    /// <summary>Counts a try of a known browser, or of a session; false when there were too many.</summary>
    public bool MayTry(Guid browser)
    {
        using RateLimitLease lease = _browsers.AttemptAcquire(browser);
        return lease.IsAcquired;
    }

    /// <inheritdoc />
    public void Dispose()
    {
        _addresses.Dispose();
        _browsers.Dispose();
    }
}
