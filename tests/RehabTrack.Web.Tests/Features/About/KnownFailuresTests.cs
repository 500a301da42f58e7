using System.Globalization;
using RehabTrack.Web.Features.About;

namespace RehabTrack.Web.Tests.Features.About;

public sealed class KnownFailuresTests
{
    [Fact]
    public void Every_share_on_the_page_of_intended_use_is_one_that_the_methods_report()
    {
        string methods = File.ReadAllText(RepositoryFolder.Of("docs", "methods.md"));
        string fails = methods[methods.IndexOf("## Where it fails", StringComparison.Ordinal)..];

        Assert.NotEmpty(KnownFailures.All);
        Assert.All(
            KnownFailures.All,
            known => Assert.Contains(known.Share.ToString(".000", CultureInfo.InvariantCulture), fails, StringComparison.Ordinal)
        );
    }
}
