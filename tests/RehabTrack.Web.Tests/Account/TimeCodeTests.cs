using System.Text;
using OtpNet;
using RehabTrack.Web.Account;

namespace RehabTrack.Web.Tests.Account;

public sealed class TimeCodeTests
{
    /// <summary>The test vectors of RFC 6238, appendix B, SHA-1, their last six figures (from memory).</summary>
    [Theory]
    [InlineData(59, "287082")]
    [InlineData(1111111109, "081804")]
    [InlineData(1111111111, "050471")]
    [InlineData(1234567890, "005924")]
    [InlineData(2000000000, "279037")]
    public void The_figures_are_those_of_the_standard(long seconds, string figures)
    {
        string key = Base32Encoding.ToString(Encoding.ASCII.GetBytes("12345678901234567890"));

        Assert.Equal(seconds / 30, TimeCode.StepOf(key, figures, DateTime.UnixEpoch.AddSeconds(seconds), 0));
    }

    /// <summary>OWASP ASVS 5.0, 6.5.5 (from memory).</summary>
    [Theory]
    [InlineData(-2, false)]
    [InlineData(-1, true)]
    [InlineData(0, true)]
    [InlineData(1, true)]
    [InlineData(2, false)]
    public void They_are_taken_one_half_minute_before_and_after_and_no_longer(int steps, bool takes)
    {
        string key = TimeCode.NewKey();
        DateTime now = DateTime.UnixEpoch.AddSeconds(30 * 60_000_000L + 15);
        string figures = new Totp(Base32Encoding.ToBytes(key)).ComputeTotp(now.AddSeconds(30 * steps));

        Assert.Equal(takes, TimeCode.StepOf(key, figures, now, 0) is not null);
    }

    [Fact]
    public void A_step_that_was_taken_is_not_taken_again_nor_one_before_it()
    {
        string key = TimeCode.NewKey();
        DateTime now = DateTime.UnixEpoch.AddSeconds(30 * 60_000_000L + 15);
        string figures = new Totp(Base32Encoding.ToBytes(key)).ComputeTotp(now);

        Assert.Equal(60_000_000, TimeCode.StepOf(key, $" {figures[..3]} {figures[3..]} ", now, 59_999_999));
        Assert.Null(TimeCode.StepOf(key, figures, now, 60_000_000));
        Assert.Null(TimeCode.StepOf(null, figures, now, 0));
    }

    /// <summary>160 bits: RFC 4226, 4, requirement 6 (from memory).</summary>
    [Fact]
    public void A_key_has_160_bits_and_is_never_the_same()
    {
        string[] keys = [.. Enumerable.Range(0, 100).Select(_ => TimeCode.NewKey())];

        Assert.All(keys, key => Assert.Equal(20, Base32Encoding.ToBytes(key).Length));
        Assert.Equal(keys.Length, keys.Distinct(StringComparer.Ordinal).Count());
    }
}
