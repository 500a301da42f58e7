namespace RehabTrack.Architecture.Tests;

/// <summary>The files of this repository, as the tests were built from it.</summary>
internal static class Repository
{
    private static readonly string[] Unread = ["bin", "obj", "artifacts", "TestResults", "node_modules", ".git", ".vs", ".idea"];

    public static string Read(string path) => File.ReadAllText(RepositoryFolder.Of(path));

    /// <summary>Paths relative to the root, with forward slashes, ordered; built files are left out.</summary>
    public static IEnumerable<string> Files(string under, string ending) =>
        Walk(RepositoryFolder.Of(under))
            .Where(path => path.EndsWith(ending, StringComparison.Ordinal))
            .Select(path => Path.GetRelativePath(RepositoryFolder.Root, path).Replace('\\', '/'))
            .Order(StringComparer.Ordinal);

    private static IEnumerable<string> Walk(string folder) =>
        Directory
            .EnumerateFiles(folder)
            .Concat(Directory.EnumerateDirectories(folder).Where(inner => !Unread.Contains(Path.GetFileName(inner))).SelectMany(Walk));
}
