namespace RehabTrack.Web.Hosting;

/// <summary>
/// A file for what is too much for memory and is sent at once. It is the owner's alone: on a machine of several users none of the others can
/// read it. It is gone with its last reader, also when the line breaks.
/// </summary>
public static class PassingFile
{
    private const int BufferBytes = 1 << 16;

    /// <summary>A new one.</summary>
    /// <param name="folder">Where; null for the folder for temporary files.</param>
    public static FileStream Create(string? folder = null)
    {
        FileStreamOptions options = new()
        {
            Mode = FileMode.CreateNew,
            Access = FileAccess.ReadWrite,
            Share = FileShare.None,
            BufferSize = BufferBytes,
            Options = FileOptions.DeleteOnClose | FileOptions.Asynchronous,
        };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        return new FileStream(Path.Combine(folder ?? Path.GetTempPath(), Path.GetRandomFileName()), options);
    }
}
