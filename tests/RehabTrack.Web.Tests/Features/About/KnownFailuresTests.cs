using System.Globalization;
using System.Reflection;
using RehabTrack.Web.Features.About;

namespace RehabTrack.Web.Tests.Features.About;

public sealed class KnownFailuresTests
{
    [Fact]
    public void Every_share_on_the_page_of_intended_use_is_one_that_the_methods_report()
    {
        string methods = File.ReadAllText(Path.Combine(Root(), "docs", "methods.md"));
        string fails = methods[methods.IndexOf("## Where it fails", StringComparison.Ordinal)..];

        Assert.NotEmpty(KnownFailures.All);
        Assert.All(
            KnownFailures.All,
            known => Assert.Contains(known.Share.ToString(".000", CultureInfo.InvariantCulture), fails, StringComparison.Ordinal)
        );
    }

    private static string Root()
    {
        DirectoryInfo? folder = new(Path.GetDirectoryName(Assembly.GetExecutingAssembly().Location)!);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "RehabTrack.sln")))
        {
            folder = folder.Parent;
        }

        return folder!.FullName;
    }
}
