using System.Net;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Hosting;

public sealed class OpenWindowsTests
{
    private static readonly IPAddress Here = IPAddress.Parse("203.0.113.7");
    private static readonly IPAddress There = IPAddress.Parse("203.0.113.8");

    private readonly OpenWindows _windows = new(new ServingLimits { WindowsPerPerson = 1, WindowsPerAddress = 2 });

    [Fact]
    public void A_person_has_no_more_than_allowed_until_one_is_closed_however_often()
    {
        Guid person = Guid.NewGuid();
        using IDisposable? first = _windows.TryOpen(person, Here);
        Assert.NotNull(first);
        Assert.Null(_windows.TryOpen(person, There));
        first.Dispose();
        first.Dispose();
        Assert.False(_windows.IsFull(person, Here));
        using IDisposable? again = _windows.TryOpen(person, There);
        Assert.NotNull(again);
        Assert.Null(_windows.TryOpen(person, There));
    }

    [Fact]
    public void An_address_has_no_more_than_allowed_and_another_one_has_its_own()
    {
        using IDisposable? one = _windows.TryOpen(Guid.NewGuid(), Here);
        using IDisposable? two = _windows.TryOpen(Guid.NewGuid(), Here);
        Assert.Null(_windows.TryOpen(Guid.NewGuid(), Here));
        using IDisposable? elsewhere = _windows.TryOpen(Guid.NewGuid(), There);
        Assert.NotNull(elsewhere);
    }
}
