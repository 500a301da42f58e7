using RehabTrack.Records.Rights;

namespace RehabTrack.Records.Accounts;

/// <summary>What an invitation shows to whoever holds it.</summary>
/// <param name="Person">Whose it is.</param>
/// <param name="PracticeName">The practice.</param>
/// <param name="SignInName">The name the person signs in with, or the one that is proposed; null when nothing can be proposed.</param>
/// <param name="HasAccount">Whether the person has a password already, which this one replaces.</param>
public sealed record InvitationView(Actor Person, string PracticeName, string? SignInName, bool HasAccount);
