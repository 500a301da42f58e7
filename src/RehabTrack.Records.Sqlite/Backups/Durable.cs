using System.ComponentModel;
using System.Runtime.InteropServices;

namespace RehabTrack.Records.Sqlite.Backups;

/// <summary>Writes that outlive a power cut: the bytes first, then the name.</summary>
internal static class Durable
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>A new file, readable for its owner only where the system knows owners.</summary>
    public static FileStream Create(string path)
    {
        FileStreamOptions options = new()
        {
            Mode = FileMode.CreateNew,
            Access = FileAccess.ReadWrite,
            Share = FileShare.None,
            BufferSize = 1 << 16,
        };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = OwnerOnly;
        }

        return new FileStream(path, options);
    }

    /// <summary>Gives a file its name, and sees to it that the name is on the disk too.</summary>
    public static void Name(string unfinished, string path)
    {
        File.Move(unfinished, path);
        FlushFolder(Path.GetDirectoryName(path)!);
    }

    /// <summary>Brings what stands in a folder onto the disk; on Windows the system does so itself.</summary>
    public static void FlushFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        int handle = Open(folder, 0);
        if (handle < 0)
        {
            throw Broken(folder);
        }

        try
        {
            if (Synchronise(handle) != 0)
            {
                throw Broken(folder);
            }
        }
        finally
        {
            _ = Close(handle);
        }
    }

    private static IOException Broken(string folder)
    {
        Win32Exception why = new(Marshal.GetLastPInvokeError());
        return new IOException($"{why.Message} : '{folder}'", why);
    }

    // Only the system's own library is asked, and only where it is there.
    [DllImport("libc", EntryPoint = "open", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern int Synchronise(int handle);

    [DllImport("libc", EntryPoint = "close", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern int Close(int handle);
}
