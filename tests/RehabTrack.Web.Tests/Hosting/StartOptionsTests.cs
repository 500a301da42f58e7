using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Hosting;

public sealed class StartOptionsTests
{
    [Fact]
    public void The_demo_has_a_data_folder_of_its_own()
    {
        StartOptions demo = StartOptions.Parse(["--demo"]);
        StartOptions practice = StartOptions.Parse([]);
        Assert.True(demo.IsDemo);
        Assert.False(practice.IsDemo);
        Assert.NotEqual(demo.DataFolder, practice.DataFolder);
    }

    [Theory]
    [InlineData("--data", "a folder")]
    [InlineData("--data=a folder")]
    public void The_data_folder_can_be_named(params string[] arguments) =>
        Assert.Equal(Path.GetFullPath("a folder"), StartOptions.Parse(arguments).DataFolder);

    [Theory]
    [InlineData("--data")]
    [InlineData("--data=")]
    [InlineData("--data", "--demo")]
    public void A_data_folder_without_a_name_is_refused(params string[] arguments) =>
        Assert.Throws<StartRefusedException>(() => StartOptions.Parse(arguments));

    [Fact]
    public void What_is_not_ours_goes_to_the_framework_whole() =>
        Assert.Equal(
            ["--urls", "http://localhost:5081"],
            StartOptions.Parse(["--demo", "--urls", "http://localhost:5081", "--data", "x"]).FrameworkArguments
        );
}
