using Microsoft.AspNetCore.DataProtection;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Account;

/// <summary>
/// Remembers in a browser who has signed in there. Strangers who try somebody's name lock out strangers only: the person's own browsers have
/// tries of their own.
/// </summary>
public sealed class KnownBrowsers(IDataProtectionProvider protection, AppMode mode)
{
    private const int MostPeople = 12;
    private static readonly TimeSpan Time = TimeSpan.FromDays(180);
    private readonly SealedCookie<Carried> _cookie = new(protection, mode, "known");

    /// <summary>The browser's own id, when the person has signed in there before; null otherwise.</summary>
    public Guid? Find(HttpContext context, Guid personId) =>
        _cookie.Read(context) is { } carried && carried.People.Contains(personId) ? carried.Browser : null;

    /// <summary>Remembers that the person has signed in.</summary>
    public void Remember(HttpContext context, Guid personId)
    {
        Carried carried = _cookie.Read(context) ?? new Carried(Guid.NewGuid(), []);
        Guid[] people = [personId, .. carried.People.Where(other => other != personId).Take(MostPeople - 1)];
        _cookie.Write(context, carried with { People = people }, Time, isKept: true);
    }

    private sealed record Carried(Guid Browser, Guid[] People);
}
