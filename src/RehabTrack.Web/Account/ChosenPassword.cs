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

    /// <summary>
    /// With what is wrong elsewhere goes the word that a password which was well is to be typed again: no page gets one back.
    /// </summary>
    public static IReadOnlyList<Problem> OrTypedAgain(IReadOnlyList<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(problems);
        return problems.Count == 0 || problems.Any(problem => problem.Field is "newPassword" or "newPasswordAgain")
            ? problems
            : [.. problems, new Problem("newPassword", "password-typed-again")];
    }
}
