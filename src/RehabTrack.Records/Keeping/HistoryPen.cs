namespace RehabTrack.Records.Keeping;

/// <summary>Writes many lines of the trail through one prepared statement, each chained to the one before.</summary>
internal sealed class HistoryPen : IDisposable
{
    private readonly BulkInsert<ChangeRecord> lines;
    private readonly TrailChain chain;

    private HistoryPen(RecordsContext records, TrailChain chain)
    {
        lines = new BulkInsert<ChangeRecord>(records);
        this.chain = chain;
    }

    /// <summary>A pen at the end of the trail; while it is used, nothing else of the same transaction writes to the trail.</summary>
    public static async Task<HistoryPen> OpenAsync(RecordsContext records, CancellationToken cancellation) =>
        new(records, await TrailChain.AtEndAsync(records, cancellation));

    /// <summary>Writes one line.</summary>
    public void Write(ChangeRecord line)
    {
        chain.Append(line);
        lines.Write(line);
    }

    public void Dispose() => lines.Dispose();
}
