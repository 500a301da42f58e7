namespace RehabTrack.Records.Cases;

/// <summary>How a case was closed.</summary>
/// <param name="End">How it ended.</param>
/// <param name="On">The day it ended.</param>
/// <param name="Outcome">The outcome, in the vet's words.</param>
/// <param name="By">The vet who signed that.</param>
public sealed record CaseClosing(CaseEnd End, DateOnly On, string Outcome, string By);
