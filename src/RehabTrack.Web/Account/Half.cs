using RehabTrack.Records.Accounts;

namespace RehabTrack.Web.Account;

/// <summary>Somebody half-way in.</summary>
/// <param name="Account">Whose password was shown.</param>
/// <param name="ReturnUrl">Where they wanted to go.</param>
/// <param name="NewKey">A key for the second step that is not confirmed by a code yet; null when none is being set up.</param>
/// <param name="IsPassed">Whether the second step is done, and only the new recovery codes are still to be kept.</param>
public sealed record Half(SignInAccount Account, string? ReturnUrl, string? NewKey, bool IsPassed);
