using System.Net;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Rights;
using RehabTrack.Web.Account;
using RehabTrack.Web.Hosting;
using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.Account;

/// <summary>A cookie counts only as it was sealed, by this server, for its purpose and its time: OWASP ASVS 5.0, 9.1 and 9.2 (from memory).</summary>
public sealed class SealedCookieTests(RunningApp app) : IClassFixture<RunningApp>
{
    private static readonly AppMode Mode = new(false, "/data");

    [Fact]
    public void What_is_sealed_comes_back_until_its_time_is_over_for_its_purpose_and_under_its_keys_only()
    {
        EphemeralDataProtectionProvider keys = new();
        SealedCookie<string[]> cookie = new(keys, Mode, "one");

        Assert.Equal("a", Assert.Single(Read(cookie, Written(cookie, TimeSpan.FromMinutes(1)), "one") ?? []));
        Assert.Null(Read(cookie, Written(cookie, TimeSpan.FromMinutes(-1)), "one"));
        string fresh = Written(cookie, TimeSpan.FromMinutes(1));
        Assert.Null(Read(new SealedCookie<string[]>(keys, Mode, "other"), fresh, "other"));
        Assert.Null(Read(new SealedCookie<string[]>(new EphemeralDataProtectionProvider(), Mode, "one"), fresh, "one"));
        for (int at = 0; at < fresh.Length; at++)
        {
            string changed = $"{fresh[..at]}{(fresh[at] == 'A' ? 'B' : 'A')}{fresh[(at + 1)..]}";
            // The last letter of base64 can hold bits that do not count.
            Assert.True(Read(cookie, changed, "one") is null || at == fresh.Length - 1, $"A change at {at} goes unnoticed.");
        }
    }

    [Theory]
    [InlineData(1, true)]
    [InlineData(-1, false)]
    public async Task The_time_of_a_session_is_sealed_in(int hours, bool opens) =>
        Assert.Equal(opens, await OpensAsync(options => options.TicketDataFormat, hours));

    [Fact]
    public async Task A_session_sealed_by_another_server_opens_nothing()
    {
        RunningApp other = new();
        await other.InitializeAsync();
        try
        {
            ISecureDataFormat<AuthenticationTicket> theirs = other.CookieOptions.TicketDataFormat;
            Assert.False(await OpensAsync(_ => theirs, 1));
        }
        finally
        {
            await other.DisposeAsync();
        }
    }

    private async Task<bool> OpensAsync(Func<CookieAuthenticationOptions, ISecureDataFormat<AuthenticationTicket>> seal, int hours)
    {
        Actor session = await app.Services.GetRequiredService<SessionDoor>().BeginAsync(app.Vet, "test", isDemo: true);
        CookieAuthenticationOptions options = app.CookieOptions;
        DateTimeOffset until = TimeProvider.System.GetUtcNow().AddHours(hours);
        AuthenticationTicket ticket = new(
            ActorClaims.Write(session),
            new AuthenticationProperties { IssuedUtc = until.AddHours(-2), ExpiresUtc = until },
            CookieAuthenticationDefaults.AuthenticationScheme
        );
        CookieContainer cookies = new();
        cookies.Add(app.Address, new Cookie(options.Cookie.Name!, seal(options).Protect(ticket)));
        using HttpClient browser = app.Browser(cookies);
        using HttpResponseMessage answer = await browser.GetAsync("/");
        return answer.StatusCode == HttpStatusCode.OK;
    }

    private static string Written(SealedCookie<string[]> cookie, TimeSpan time)
    {
        DefaultHttpContext context = new();
        cookie.Write(context, ["a"], time, isKept: false);
        string set = context.Response.Headers.SetCookie.Single()!;
        return set[(set.IndexOf('=', StringComparison.Ordinal) + 1)..set.IndexOf(';', StringComparison.Ordinal)];
    }

    private static string[]? Read(SealedCookie<string[]> cookie, string sealedText, string purpose)
    {
        DefaultHttpContext context = new();
        context.Request.Headers.Cookie = $"{Mode.CookieName(purpose)}={sealedText}";
        return cookie.Read(context);
    }
}
