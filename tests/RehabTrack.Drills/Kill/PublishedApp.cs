using System.Diagnostics;

namespace RehabTrack.Drills.Kill;

/// <summary>The published program, started on what a kill left, and killed itself.</summary>
internal static class PublishedApp
{
    private const string Variable = "REHABTRACK_PUBLISHED";

    /// <summary>Starts it on a data folder, waits until it says that it answers, and kills it.</summary>
    /// <returns>Seconds to the line; null when there is no published program.</returns>
    public static async Task<double?> StartAsync(string data)
    {
        string folder = Environment.GetEnvironmentVariable(Variable) ?? RepositoryFolder.Of("artifacts", "web");
        string program = Path.Combine(folder, "RehabTrack.Web.dll");
        if (!File.Exists(program))
        {
            return null;
        }

        long begun = Stopwatch.GetTimestamp();
        using ChildProcess app = ChildProcess.Start("dotnet", [program, "--data", data, "--urls", "http://127.0.0.1:0"]);
        while (await app.LineAsync() is { } line)
        {
            if (line.Contains("http://127.0.0.1", StringComparison.Ordinal))
            {
                return Stopwatch.GetElapsedTime(begun).TotalSeconds;
            }
        }

        throw new InvalidOperationException("The program ended before it answered.");
    }
}
