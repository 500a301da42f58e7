using System.Diagnostics;
using System.Globalization;

namespace RehabTrack.Drills.Disk;

/// <summary>A small disk that can be filled: a file system in memory.</summary>
internal sealed class SmallDisk : IFullDisk
{
    private const int Megabytes = 64;
    private const int Block = 4096;
    private readonly DrillFolder folder;

    private SmallDisk(DrillFolder folder)
    {
        this.folder = folder;
    }

    public string Kind => "a file system of 64 MB";

    public string Data => folder.Sub("data");

    public string Copies => folder.Sub("copies");

    private string Ballast => folder.Sub("ballast");

    /// <summary>Mounts one; null where this may not be done.</summary>
    public static SmallDisk? Mount()
    {
        DrillFolder place = new();
        string size = string.Create(CultureInfo.InvariantCulture, $"size={Megabytes}m");
        if (OperatingSystem.IsLinux() && Run("mount", ["-t", "tmpfs", "-o", size, "tmpfs", place.Path]))
        {
            return new SmallDisk(place);
        }

        place.Dispose();
        return null;
    }

    public void Fill(int spared)
    {
        using FileStream file = new(Ballast, FileMode.Append);
        byte[] block = new byte[Block];
        try
        {
            while (true)
            {
                file.Write(block);
                file.Flush();
            }
        }
        catch (IOException)
        {
            // Full, as wished.
        }

        file.SetLength(Math.Max(0, file.Length - ((long)spared * Block)));
    }

    public void Free() => File.Delete(Ballast);

    public void Dispose()
    {
        Run("umount", [folder.Path]);
        folder.Dispose();
    }

    private static bool Run(string program, string[] arguments)
    {
        try
        {
            using Process process = Process.Start(
                new ProcessStartInfo(program, arguments) { RedirectStandardError = true, UseShellExecute = false }
            )!;
            process.StandardError.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
