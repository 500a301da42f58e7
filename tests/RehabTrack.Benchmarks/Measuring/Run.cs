using System.Diagnostics;

namespace RehabTrack.Benchmarks.Measuring;

/// <summary>One run of a program as a process of its own.</summary>
/// <param name="Seconds">By the clock.</param>
/// <param name="PeakBytes">The most memory it held, as the operating system counts it.</param>
public sealed record Run(double Seconds, long PeakBytes)
{
    /// <summary>Runs an assembly of this folder to its end.</summary>
    /// <param name="assembly">Its name.</param>
    /// <param name="arguments">The command line.</param>
    /// <exception cref="InvalidOperationException">It ended with an error.</exception>
    public static async Task<Run> OfAsync(string assembly, params string[] arguments)
    {
        ProcessStartInfo start = new("dotnet", [Path.Combine(AppContext.BaseDirectory, assembly), .. arguments])
        {
            UseShellExecute = false,
            RedirectStandardError = true,
        };
        long begin = Stopwatch.GetTimestamp();
        using Process process = Process.Start(start) ?? throw new InvalidOperationException("The program did not start.");
        Task<string> messages = process.StandardError.ReadToEndAsync();
        long peak = 0;
        while (!process.HasExited)
        {
            process.Refresh();
            peak = Math.Max(peak, process.PeakWorkingSet64);
            await Task.WhenAny(process.WaitForExitAsync(), Task.Delay(100));
        }

        await process.WaitForExitAsync();
        double seconds = Stopwatch.GetElapsedTime(begin).TotalSeconds;
        return process.ExitCode == 0 ? new Run(seconds, peak) : throw new InvalidOperationException(await messages);
    }
}
