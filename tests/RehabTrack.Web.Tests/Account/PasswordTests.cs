using System.Net;
using System.Text.RegularExpressions;
using static RehabTrack.Web.Tests.Account.NewServer;

namespace RehabTrack.Web.Tests.Account;

/// <summary>What is asked of a password, and what is not: OWASP ASVS 5.0, 6.2.5 to 6.2.9 (from memory).</summary>
public sealed partial class PasswordTests : IAsyncLifetime
{
    private readonly NewServer _server = new();

    public Task InitializeAsync() => _server.InitializeAsync();

    public Task DisposeAsync() => _server.DisposeAsync();

    [Theory]
    [InlineData("  Wiesenschaumkraut und 3 Fohlen  ")]
    [InlineData("кобыла на лугу \U0001F40E \"<&'>")]
    [InlineData("only small letters of an odd meadow")]
    public async Task It_may_hold_any_letters_and_counts_to_the_letter_as_typed(string password)
    {
        using HttpClient first = _server.Browser();
        Assert.Equal("/sign-in/second-step", (await SendAsync(first, "/set-up", "set-up", _server.FirstRun(password: password))).To);
        (await SecondStepAsync(first, "/")).Browser.Dispose();

        foreach (string other in (string[])[$"{password} ", password[1..], password.ToUpperInvariant()])
        {
            Assert.Null((await ComeAsync(other)).To);
        }

        Assert.Equal("/sign-in/code", (await ComeAsync(password)).To);
    }

    [Fact]
    public async Task It_may_be_128_letters_long_and_no_longer_and_nothing_is_cut_off()
    {
        string longest = string.Concat(Enumerable.Range(0, 32).Select(part => $"{part:00}-m"));
        Assert.Equal(128, longest.Length);
        using HttpClient browser = _server.Browser();

        Answer refused = await SendAsync(browser, "/set-up", "set-up", _server.FirstRun(password: longest + "x"));
        Answer taken = await SendAsync(browser, "/set-up", "set-up", _server.FirstRun(password: longest));
        (await SecondStepAsync(browser, "/")).Browser.Dispose();

        Assert.Null(refused.To);
        Assert.Contains("new-password-error", refused.Body, StringComparison.Ordinal);
        Assert.Equal("/sign-in/second-step", taken.To);
        Assert.Null((await ComeAsync(longest[..^1])).To);
        Assert.Equal("/sign-in/code", (await ComeAsync(longest)).To);
    }

    [Fact]
    public async Task Its_fields_are_masked_and_programs_that_keep_passwords_can_fill_them()
    {
        using HttpClient browser = _server.Browser();
        string setUp = await browser.GetStringAsync("/set-up");
        Insider ida = await _server.SetUpAsync();
        string account = await ida.Browser.GetStringAsync("/account");
        string signIn = await browser.GetStringAsync("/sign-in");
        ida.Browser.Dispose();

        Assert.Equal(["new-password", "new-password"], Masked(setUp));
        Assert.Equal(["current-password", "new-password", "new-password", "current-password"], Masked(account));
        Assert.Equal(["current-password"], Masked(signIn));
        Assert.Contains("autocomplete=\"username\"", signIn, StringComparison.Ordinal);
        foreach (string page in (string[])[setUp, account, signIn])
        {
            Assert.DoesNotContain("maxlength", page, StringComparison.Ordinal);
            Assert.DoesNotContain("onpaste", page, StringComparison.OrdinalIgnoreCase);
        }
    }

    private async Task<Answer> ComeAsync(string password)
    {
        using HttpClient browser = _server.Browser();
        return await SignInAsync(browser, "ida@example.org", password);
    }

    /// <summary>What programs that keep passwords are told of each masked field, in the order of the page; every one has no value.</summary>
    private static string[] Masked(string page)
    {
        string[] fields =
        [
            .. Field()
                .Matches(page)
                .Select(match => match.Value)
                .Where(field => field.Contains("type=\"password\"", StringComparison.Ordinal)),
        ];
        Assert.All(fields, field => Assert.DoesNotMatch(" value=\"[^\"]", field));
        Assert.Equal(Field().Matches(page).Count(match => Named().IsMatch(match.Value)), fields.Length);
        return [.. fields.Select(field => WebUtility.HtmlDecode(AutoComplete().Match(field).Groups["for"].Value))];
    }

    [GeneratedRegex("<input[^>]*>", RegexOptions.None, 1000)]
    private static partial Regex Field();

    [GeneratedRegex(" name=\"[^\"]*password[^\"]*\"", RegexOptions.None, 1000)]
    private static partial Regex Named();

    [GeneratedRegex("autocomplete=\"(?<for>[^\"]*)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex AutoComplete();
}
