namespace RehabTrack.Benchmarks.Measuring;

/// <summary>Something that is measured against its baselines.</summary>
public interface IScene
{
    /// <summary>The word that picks it on the command line.</summary>
    public string Name { get; }

    /// <summary>Measures.</summary>
    /// <param name="isShort">Fewer rounds.</param>
    public IAsyncEnumerable<Ratio> MeasureAsync(bool isShort);
}
