using System.Diagnostics;

namespace RehabTrack.Drills;

/// <summary>Another process whose lines are read, and which is killed without a word.</summary>
internal sealed class ChildProcess : IDisposable
{
    private readonly Process process;

    private ChildProcess(Process process)
    {
        this.process = process;
    }

    /// <summary>This program again, with other arguments.</summary>
    public static ChildProcess Again(params string[] arguments)
    {
        string self = Environment.ProcessPath!;
        return Path.GetFileNameWithoutExtension(self) == "dotnet"
            ? Start(self, [typeof(ChildProcess).Assembly.Location, .. arguments])
            : Start(self, arguments);
    }

    public static ChildProcess Start(string program, IEnumerable<string> arguments)
    {
        ProcessStartInfo start = new(program, arguments) { RedirectStandardOutput = true, UseShellExecute = false };
        return new ChildProcess(Process.Start(start)!);
    }

    /// <summary>The next line; null when it ended.</summary>
    public ValueTask<string?> LineAsync() => new(process.StandardOutput.ReadLineAsync());

    /// <summary>Ends it as a pulled plug would: SIGKILL, which no process can answer.</summary>
    public void Kill() => process.Kill();

    public async Task<int> EndedAsync()
    {
        await process.WaitForExitAsync();
        return process.ExitCode;
    }

    public void Dispose()
    {
        if (!process.HasExited)
        {
            process.Kill();
        }

        process.Dispose();
    }
}
