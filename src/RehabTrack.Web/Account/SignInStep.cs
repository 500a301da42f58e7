namespace RehabTrack.Web.Account;

/// <summary>Where a sign-in stands after a step of it.</summary>
/// <param name="Address">Where to go on; null when the step was refused.</param>
/// <param name="ProblemCode">Why it was refused; null when it was not.</param>
public sealed record SignInStep(string? Address, string? ProblemCode)
{
    /// <summary>Goes on.</summary>
    public static SignInStep To(string address) => new(address, null);

    /// <summary>Refused.</summary>
    public static SignInStep Refused(string code) => new(null, code);
}
