using System.IO.Compression;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Sqlite.Backups;

/// <summary>A backup opened to be read. Nothing in it is trusted until its manifest and every checksum were looked at.</summary>
internal sealed class BackupArchive : IDisposable
{
    private const int LargestManifest = 16 << 20;
    private readonly string file;
    private readonly ZipArchive? zip;

    private BackupArchive(string path, ZipArchive? zip, BackupManifest? manifest, IReadOnlyList<Problem> problems)
    {
        file = path;
        this.zip = zip;
        Manifest = manifest!;
        Problems = problems;
    }

    /// <summary>What it says of itself; there only without problems.</summary>
    public BackupManifest Manifest { get; }

    /// <summary>Why it cannot be used as such; empty when it can.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    public static BackupArchive Open(string path)
    {
        ZipArchive? opened = null;
        try
        {
            opened = ZipFile.OpenRead(path);
            if (opened.GetEntry(BackupManifest.Name) is not { Length: <= LargestManifest } entry || ReadManifest(entry) is not { } manifest)
            {
                return new(path, opened, null, [BackupProblems.NotOurs(path)]);
            }

            return manifest.Format > BackupManifest.PresentFormat
                ? new(path, opened, null, [BackupProblems.Newer(path, manifest.Program)])
                : new(path, opened, manifest, [.. Unlike(path, opened, manifest)]);
        }
        catch (InvalidDataException)
        {
            return new(path, opened, null, [BackupProblems.NotOurs(path)]);
        }
        catch (Exception broken) when (broken is IOException or UnauthorizedAccessException)
        {
            return new(path, opened, null, [BackupProblems.NotRead(path, broken.Message)]);
        }
    }

    /// <summary>Reads every file and holds it against its checksum.</summary>
    public Task<List<Problem>> CheckAsync(CancellationToken cancellation) => ReadAsync(null, cancellation);

    /// <summary>Writes every file into a folder, onto the disk, and holds what was written against its checksum.</summary>
    public Task<List<Problem>> ExtractAsync(string folder, CancellationToken cancellation) => ReadAsync(folder, cancellation);

    public void Dispose() => zip?.Dispose();

    private async Task<List<Problem>> ReadAsync(string? folder, CancellationToken cancellation)
    {
        List<Problem> wrong = [];
        HashSet<string> folders = [];
        foreach (BackupFile listed in Manifest.Files)
        {
            try
            {
                await using Stream entry = zip!.GetEntry(listed.Path)!.Open();
                await using FileStream? written = folder is null ? null : Create(folder, listed.Path, folders);
                (long length, string sha256) = await HashedCopy.RunAsync(entry, written, listed.Length, cancellation);
                written?.Flush(flushToDisk: true);
                if (length != listed.Length || !string.Equals(sha256, listed.Sha256, StringComparison.OrdinalIgnoreCase))
                {
                    wrong.Add(BackupProblems.FileDamaged(file, listed.Path));
                }
            }
            catch (InvalidDataException)
            {
                wrong.Add(BackupProblems.FileDamaged(file, listed.Path));
            }
        }

        foreach (string made in folders)
        {
            Durable.FlushFolder(made);
        }

        return wrong;
    }

    private static FileStream Create(string folder, string name, HashSet<string> folders)
    {
        string written = Path.Combine(folder, name.Replace('/', Path.DirectorySeparatorChar));
        string inside = Path.GetDirectoryName(written)!;
        DataFolder.CreateOwned(inside);
        folders.Add(inside);
        folders.Add(folder);
        return Durable.Create(written);
    }

    private static BackupManifest? ReadManifest(ZipArchiveEntry entry)
    {
        using Stream stream = entry.Open();
        byte[] json = new byte[entry.Length];
        return stream.ReadAtLeast(json, json.Length, throwOnEndOfStream: false) == json.Length ? BackupManifest.Read(json) : null;
    }

    // A name that stands twice, or is not in the manifest, is not ours to unpack.
    private static IEnumerable<Problem> Unlike(string path, ZipArchive opened, BackupManifest manifest)
    {
        Dictionary<string, int> there = opened.Entries.CountBy(entry => entry.FullName, StringComparer.Ordinal).ToDictionary();
        there.Remove(BackupManifest.Name);
        foreach (BackupFile listed in manifest.Files)
        {
            if (!there.Remove(listed.Path, out int times))
            {
                yield return BackupProblems.FileMissing(path, listed.Path);
            }
            else if (times > 1)
            {
                yield return BackupProblems.FileUnknown(path, listed.Path);
            }
        }

        foreach (string unknown in there.Keys)
        {
            yield return BackupProblems.FileUnknown(path, unknown);
        }
    }
}
