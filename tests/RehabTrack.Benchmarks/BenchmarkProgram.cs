using BenchmarkDotNet.Running;

namespace RehabTrack.Benchmarks;

/// <summary>Runs the benchmarks chosen on the command line.</summary>
public static class BenchmarkProgram
{
    /// <summary>Entry point.</summary>
    public static void Main(string[] args) => BenchmarkSwitcher.FromAssembly(typeof(BenchmarkProgram).Assembly).Run(args);
}
