using System.Diagnostics;

namespace RehabTrack.Browser.Tests.Harness;

/// <summary>
/// The app as it is handed to people: published, not run from its sources. <c>./test</c> publishes it and names the folder;
/// without that the tests publish it themselves, once.
/// </summary>
internal static class PublishedApp
{
    private static readonly Lazy<Task<string>> Publishing = new(PublishAsync);

    /// <summary>The program to start.</summary>
    public static async Task<string> FindAsync() => Path.Combine(await Publishing.Value, "RehabTrack.Web.dll");

    private static async Task<string> PublishAsync()
    {
        if (Environment.GetEnvironmentVariable("REHABTRACK_PUBLISHED") is { Length: > 0 } given)
        {
            return given;
        }

        string folder = RepositoryFolder.Of("artifacts", "web");
        ProcessStartInfo start = new("dotnet")
        {
            WorkingDirectory = RepositoryFolder.Root,
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        foreach (string argument in (string[])["publish", "src/RehabTrack.Web", "-c", "Release", "-o", folder, "-v", "quiet", "--nologo"])
        {
            start.ArgumentList.Add(argument);
        }

        using Process publish = Process.Start(start) ?? throw new InvalidOperationException("dotnet publish did not start.");
        string output = await publish.StandardOutput.ReadToEndAsync();
        await publish.WaitForExitAsync();
        return publish.ExitCode == 0 ? folder : throw new InvalidOperationException("The app could not be published: " + output);
    }
}
