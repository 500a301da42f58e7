namespace RehabTrack.Drills;

/// <summary>A folder that is gone after the drill.</summary>
internal sealed class DrillFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("rehabtrack-drill-").FullName;

    public string Sub(string name) => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
