namespace RehabTrack.Drills.Disk;

/// <summary>What lies under the records and can be full.</summary>
internal interface IFullDisk : IDisposable
{
    /// <summary>In words, for the row of the table.</summary>
    public string Kind { get; }

    /// <summary>Where the records lie.</summary>
    public string Data { get; }

    /// <summary>Where a backup is tried while it is full; null when that has room of its own.</summary>
    public string? Copies { get; }

    /// <summary>Fills it.</summary>
    /// <param name="spared">Blocks or pages that are left.</param>
    public void Fill(int spared);

    /// <summary>Makes room again.</summary>
    public void Free();
}
