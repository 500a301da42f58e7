using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Accounts;

namespace RehabTrack.Web.Account;

/// <summary>Which passwords are taken: long enough, and not one of those that are guessed first. Nothing else is asked of them.</summary>
public static class PasswordRules
{
    private static readonly SignInSettings Settings = new();

    /// <summary>What is wrong with a password; empty when it is taken.</summary>
    /// <param name="field">The field it was typed in.</param>
    /// <param name="password">As typed.</param>
    /// <param name="known">What a guesser would try first: names of person, practice and account.</param>
    public static IReadOnlyList<Problem> Check(string field, string? password, params IEnumerable<string?> known)
    {
        string typed = password ?? "";
        if (typed.Length < Settings.ShortestPassword)
        {
            return [new Problem(field, "password-short", Text(Settings.ShortestPassword))];
        }

        if (typed.Length > Settings.LongestPassword)
        {
            return [new Problem(field, "password-long", Text(Settings.LongestPassword))];
        }

        string[] words =
        [
            Wording.Common.AppName,
            .. known.OfType<string>().SelectMany(text => text.Split(' ', '@', '.')).Where(word => word.Length > 2),
        ];
        return Zxcvbn.Zxcvbn.MatchPassword(typed, words).Score < Settings.LeastStrength
            ? [new Problem(field, "password-guessed-first")]
            : [];
    }

    private static string Text(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
