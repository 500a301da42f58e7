namespace RehabTrack.Browser.Tests.Harness;

/// <summary>The files of a demo that was loaded and has ended.</summary>
internal sealed class DemoFiles
{
    private readonly Dictionary<string, byte[]> _contents;

    private DemoFiles(Dictionary<string, byte[]> contents)
    {
        _contents = contents;
    }

    /// <summary>Reads them.</summary>
    public static DemoFiles Read(DirectoryInfo folder) =>
        new(
            folder
                .EnumerateFiles("*", SearchOption.AllDirectories)
                .ToDictionary(file => Path.GetRelativePath(folder.FullName, file.FullName), file => File.ReadAllBytes(file.FullName))
        );

    /// <summary>Writes them into an empty folder.</summary>
    public void CopyTo(DirectoryInfo folder)
    {
        foreach ((string path, byte[] content) in _contents)
        {
            string target = Path.Combine(folder.FullName, path);
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.WriteAllBytes(target, content);
        }
    }
}
