using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Web.Account;

/// <summary>A password that was typed twice.</summary>
public static class ChosenPassword
{
    /// <summary>What is wrong with it; empty when it is taken.</summary>
    /// <param name="password">As typed first.</param>
    /// <param name="again">As typed again.</param>
    /// <param name="known">What a guesser would try first.</param>
    public static List<Problem> Check(string? password, string? again, params IEnumerable<string?> known)
    {
        List<Problem> problems = [.. PasswordRules.Check("newPassword", password, known)];
        if (problems.Count == 0 && password != again)
        {
            problems.Add(new Problem("newPasswordAgain", "password-differs"));
        }

        return problems;
    }
}
