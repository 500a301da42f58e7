using System.Buffers.Binary;
using System.Net;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Rights;
using RehabTrack.Web.Account;
using static RehabTrack.Web.Tests.Account.NewServer;

namespace RehabTrack.Web.Tests.Account;

/// <summary>Who guesses learns nothing and is put off; who is guessed at is not shut out for good.</summary>
public sealed class LockOutTests : IAsyncLifetime
{
    private const string Name = "ida@example.org";

    private static readonly SignInSettings Settings = new();

    private readonly NewServer _server = new();

    public Task InitializeAsync() => _server.InitializeAsync();

    public Task DisposeAsync() => _server.DisposeAsync();

    [Theory]
    [InlineData("nobody@example.org", "wrong-wrong-wrong", false)]
    [InlineData("", "", false)]
    [InlineData(Name, "wrong-wrong-wrong", false)]
    [InlineData(Name, "wrong-wrong-wrong", true)]
    [InlineData(Name, Password, true)]
    [InlineData(Name, Password, false)]
    public async Task The_hasher_runs_once_whoever_is_asked_for(string name, string password, bool isLocked)
    {
        (await _server.SetUpAsync()).Browser.Dispose();
        if (isLocked)
        {
            await LockAsync();
        }

        await using AsyncServiceScope scope = _server.Services.CreateAsyncScope();
        UserManager<SignInAccount> users = scope.ServiceProvider.GetRequiredService<UserManager<SignInAccount>>();
        CountingHasher counting = new(users.PasswordHasher);
        users.PasswordHasher = counting;

        SignInAccount? found = await scope
            .ServiceProvider.GetRequiredService<PasswordCheck>()
            .ByNameAsync(new DefaultHttpContext(), name, password);

        Assert.Equal(password == Password && !isLocked, found is not null);
        Assert.Equal(1, counting.Checked);
    }

    [Fact]
    public async Task A_lock_is_over_after_its_time_and_tries_meanwhile_do_not_make_it_longer()
    {
        (await _server.SetUpAsync()).Browser.Dispose();
        DateTime before = DateTime.UtcNow;
        await LockAsync();
        DateTime until = (await AccountAsync()).LockedUntil!.Value;
        Assert.InRange(until, before + Settings.LockTime, DateTime.UtcNow + Settings.LockTime);

        using HttpClient stranger = _server.Browser();
        Assert.Null((await SignInAsync(stranger, Name, "wrong-wrong-wrong")).To);
        Assert.Null((await SignInAsync(stranger, Name, Password)).To);
        Assert.Equal(until, (await AccountAsync()).LockedUntil);

        await using (AsyncServiceScope scope = _server.Services.CreateAsyncScope())
        {
            UserManager<SignInAccount> users = scope.ServiceProvider.GetRequiredService<UserManager<SignInAccount>>();
            await users.SetLockoutEndDateAsync(await AccountAsync(), DateTimeOffset.UtcNow.AddSeconds(-1));
        }

        Assert.Equal("/sign-in/code", (await SignInAsync(stranger, Name, Password)).To);
    }

    [Fact]
    public async Task A_browser_that_was_here_has_tries_of_its_own_and_not_without_end()
    {
        Insider ida = await _server.SetUpAsync();
        await LockAsync();

        for (int attempt = 0; attempt < Settings.TriesOfKnownBrowser - 1; attempt++)
        {
            Assert.Null((await SignInAsync(ida.Browser, Name, "wrong-wrong-wrong")).To);
        }

        Assert.Equal("/sign-in/code", (await SignInAsync(ida.Browser, Name, Password)).To);
        Assert.Null((await SignInAsync(ida.Browser, Name, Password)).To);
        ida.Browser.Dispose();
    }

    /// <summary>
    /// The form of ASP.NET Core Identity's hashes, version 3: a mark, the function (2 is HMAC-SHA-512), the rounds, the length of the salt, each in
    /// four bytes, highest first (from memory). The rounds: OWASP Password Storage Cheat Sheet (from memory).
    /// </summary>
    [Fact]
    public async Task A_password_is_kept_as_PBKDF2_with_SHA_512_and_210000_rounds_and_a_salt_of_128_bits()
    {
        _server.DoNotHurry();
        (await _server.SetUpAsync()).Browser.Dispose();

        byte[] hash = Convert.FromBase64String((await AccountAsync()).PasswordHash!);

        Assert.Equal(1, hash[0]);
        Assert.Equal(2u, BinaryPrimitives.ReadUInt32BigEndian(hash.AsSpan(1)));
        Assert.Equal(210_000u, BinaryPrimitives.ReadUInt32BigEndian(hash.AsSpan(5)));
        Assert.Equal(16u, BinaryPrimitives.ReadUInt32BigEndian(hash.AsSpan(9)));
    }

    [Fact]
    public async Task A_changed_password_takes_back_what_else_would_open_invitations_and_ways_that_are_half_in()
    {
        (await _server.SetUpAsync()).Browser.Dispose();
        Actor ida = await _server.FirstAsync();
        (Actor mara, HttpClient desk, _) = await _server.JoinAsync(ida, "Mara Holt", Role.Vet, "mara");
        await SecondStepAsync(desk, "/");
        string invitation = await _server.InviteAsync(ida, mara, takesSecondStep: true);
        using HttpClient half = _server.Browser();
        Assert.Equal("/sign-in/code", (await SignInAsync(half, "mara", Password)).To);
        using HttpClient stranger = _server.Browser();
        Assert.Equal(HttpStatusCode.OK, (await stranger.GetAsync($"/invited/{invitation}")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await half.GetAsync("/sign-in/code")).StatusCode);

        Answer changed = await SendAsync(
            desk,
            "/account",
            "password",
            new()
            {
                ["password"] = Password,
                ["new-password"] = "plinth-otter-sundial-3",
                ["new-password-again"] = "plinth-otter-sundial-3",
            }
        );

        Assert.Equal("/account", changed.To);
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.GetAsync($"/invited/{invitation}")).StatusCode);
        Assert.Equal("/sign-in", (await half.GetAsync("/sign-in/code")).Headers.Location!.AbsolutePathOr());
        desk.Dispose();
    }

    private async Task LockAsync()
    {
        using HttpClient stranger = _server.Browser();
        for (int attempt = 0; attempt < Settings.TriesBeforeLock; attempt++)
        {
            await SignInAsync(stranger, Name, "wrong-wrong-wrong");
        }

        Assert.NotNull((await AccountAsync()).LockedUntil);
    }

    private async Task<SignInAccount> AccountAsync() =>
        (await _server.Services.GetRequiredService<AccountStore>().ByNameAsync(SignInAccount.Fold(Name)))!;

    private sealed class CountingHasher(IPasswordHasher<SignInAccount> inner) : IPasswordHasher<SignInAccount>
    {
        public int Checked { get; private set; }

        public string HashPassword(SignInAccount user, string password) => inner.HashPassword(user, password);

        public PasswordVerificationResult VerifyHashedPassword(SignInAccount user, string hashedPassword, string providedPassword)
        {
            Checked++;
            return inner.VerifyHashedPassword(user, hashedPassword, providedPassword);
        }
    }
}
