using Microsoft.AspNetCore.Identity;
using RehabTrack.Records.Accounts;

namespace RehabTrack.Web.Account;

/// <summary>
/// Accounts as ASP.NET Core Identity wants to see them. Identity hashes and checks passwords, and counts refusals; an account
/// itself is made only by the first run and by an invitation.
/// </summary>
public sealed class AccountUserStore(AccountStore accounts)
    : IUserPasswordStore<SignInAccount>,
        IUserSecurityStampStore<SignInAccount>,
        IUserLockoutStore<SignInAccount>,
        IUserTwoFactorStore<SignInAccount>
{
    /// <inheritdoc />
    public Task<string> GetUserIdAsync(SignInAccount user, CancellationToken cancellationToken) =>
        Task.FromResult(Some(user).PersonId.ToString());

    /// <inheritdoc />
    public Task<string?> GetUserNameAsync(SignInAccount user, CancellationToken cancellationToken) =>
        Task.FromResult<string?>(Some(user).SignInName);

    /// <inheritdoc />
    public Task SetUserNameAsync(SignInAccount user, string? userName, CancellationToken cancellationToken) =>
        Set(() => Some(user).SignInName = userName ?? "");

    /// <inheritdoc />
    public Task<string?> GetNormalizedUserNameAsync(SignInAccount user, CancellationToken cancellationToken) =>
        Task.FromResult<string?>(Some(user).FoldedSignInName);

    /// <inheritdoc />
    public Task SetNormalizedUserNameAsync(SignInAccount user, string? normalizedName, CancellationToken cancellationToken) =>
        Set(() => Some(user).FoldedSignInName = SignInAccount.Fold(user.SignInName));

    /// <inheritdoc />
    public Task<IdentityResult> CreateAsync(SignInAccount user, CancellationToken cancellationToken) => throw OnlyByInvitation();

    /// <inheritdoc />
    public Task<IdentityResult> DeleteAsync(SignInAccount user, CancellationToken cancellationToken) => throw OnlyByInvitation();

    /// <inheritdoc />
    public async Task<IdentityResult> UpdateAsync(SignInAccount user, CancellationToken cancellationToken) =>
        await accounts.UpdateAsync(user, cancellationToken)
            ? IdentityResult.Success
            : IdentityResult.Failed(new IdentityErrorDescriber().ConcurrencyFailure());

    /// <inheritdoc />
    public async Task<SignInAccount?> FindByIdAsync(string userId, CancellationToken cancellationToken) =>
        Guid.TryParse(userId, out Guid id) ? await accounts.OfAsync(id, cancellationToken) : null;

    /// <inheritdoc />
    public Task<SignInAccount?> FindByNameAsync(string normalizedUserName, CancellationToken cancellationToken) =>
        accounts.ByNameAsync(SignInAccount.Fold(normalizedUserName), cancellationToken);

    /// <inheritdoc />
    public Task SetPasswordHashAsync(SignInAccount user, string? passwordHash, CancellationToken cancellationToken) =>
        Set(() => Some(user).PasswordHash = passwordHash);

    /// <inheritdoc />
    public Task<string?> GetPasswordHashAsync(SignInAccount user, CancellationToken cancellationToken) =>
        Task.FromResult(Some(user).PasswordHash);

    /// <inheritdoc />
    public Task<bool> HasPasswordAsync(SignInAccount user, CancellationToken cancellationToken) =>
        Task.FromResult(Some(user).PasswordHash is not null);

    /// <inheritdoc />
    public Task SetSecurityStampAsync(SignInAccount user, string stamp, CancellationToken cancellationToken) =>
        Set(() => Some(user).SecurityStamp = stamp);

    /// <inheritdoc />
    public Task<string?> GetSecurityStampAsync(SignInAccount user, CancellationToken cancellationToken) =>
        Task.FromResult<string?>(Some(user).SecurityStamp);

    /// <inheritdoc />
    public Task<DateTimeOffset?> GetLockoutEndDateAsync(SignInAccount user, CancellationToken cancellationToken) =>
        Task.FromResult(Some(user).LockedUntil is { } until ? new DateTimeOffset(until, TimeSpan.Zero) : (DateTimeOffset?)null);

    /// <inheritdoc />
    public Task SetLockoutEndDateAsync(SignInAccount user, DateTimeOffset? lockoutEnd, CancellationToken cancellationToken) =>
        Set(() => Some(user).LockedUntil = lockoutEnd?.UtcDateTime);

    /// <inheritdoc />
    public Task<int> IncrementAccessFailedCountAsync(SignInAccount user, CancellationToken cancellationToken) =>
        Task.FromResult(++Some(user).FailedCount);

    /// <inheritdoc />
    public Task ResetAccessFailedCountAsync(SignInAccount user, CancellationToken cancellationToken) =>
        Set(() => Some(user).FailedCount = 0);

    /// <inheritdoc />
    public Task<int> GetAccessFailedCountAsync(SignInAccount user, CancellationToken cancellationToken) =>
        Task.FromResult(Some(user).FailedCount);

    /// <inheritdoc />
    public Task<bool> GetLockoutEnabledAsync(SignInAccount user, CancellationToken cancellationToken) => Task.FromResult(true);

    /// <inheritdoc />
    public Task SetLockoutEnabledAsync(SignInAccount user, bool enabled, CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc />
    public Task SetTwoFactorEnabledAsync(SignInAccount user, bool enabled, CancellationToken cancellationToken) =>
        Set(() => Some(user).HasSecondStep = enabled);

    /// <inheritdoc />
    public Task<bool> GetTwoFactorEnabledAsync(SignInAccount user, CancellationToken cancellationToken) =>
        Task.FromResult(Some(user).HasSecondStep);

    /// <inheritdoc />
    public void Dispose() => GC.SuppressFinalize(this);

    private static SignInAccount Some(SignInAccount? user)
    {
        ArgumentNullException.ThrowIfNull(user);
        return user;
    }

    private static Task Set(Action set)
    {
        set();
        return Task.CompletedTask;
    }

    private static NotSupportedException OnlyByInvitation() =>
        new("An account is made by the first run or by an invitation, and goes with its person.");
}
