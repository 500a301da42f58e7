namespace RehabTrack.Tests;

/// <summary>The folder of the repository that the tests were built in.</summary>
internal static class RepositoryFolder
{
    /// <summary>The full path of the root.</summary>
    public static string Root { get; } = Find();

    /// <summary>The full path of a file or folder under the root.</summary>
    public static string Of(params ReadOnlySpan<string> parts) => Path.Combine([Root, .. parts]);

    /// <summary>The full path of a file in a package of another ecosystem, which the test command installs as locked in <c>tests/readers</c>.</summary>
    public static string OfPackage(string package, params ReadOnlySpan<string> parts)
    {
        string folder = Of("tests", "readers", "node_modules", package);
        return Directory.Exists(folder)
            ? Path.Combine([folder, .. parts])
            : throw new InvalidOperationException(
                $"{package} is not installed: run npm ci in tests/readers, or the test command, which does."
            );
    }

    private static string Find()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "RehabTrack.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests were not built inside the repository.");
    }
}
