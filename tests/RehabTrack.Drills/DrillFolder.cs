namespace RehabTrack.Drills;

/// <summary>A folder that is gone after the drill.</summary>
internal sealed class DrillFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("rehabtrack-drill-").FullName;

    /// <summary>The repository, from which the drills were built.</summary>
    public static string Repository
    {
        get
        {
            DirectoryInfo? folder = new(AppContext.BaseDirectory);
            while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "RehabTrack.sln")))
            {
                folder = folder.Parent;
            }

            return folder?.FullName ?? throw new InvalidOperationException("The drills were not built inside the repository.");
        }
    }

    public string Sub(string name) => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
