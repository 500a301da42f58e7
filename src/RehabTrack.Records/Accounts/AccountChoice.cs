namespace RehabTrack.Records.Accounts;

/// <summary>What a person chose to sign in with.</summary>
/// <param name="SignInName">The name, as typed.</param>
/// <param name="PasswordHash">The hash of the password, as ASP.NET Core Identity makes it.</param>
public sealed record AccountChoice(string SignInName, string PasswordHash);
