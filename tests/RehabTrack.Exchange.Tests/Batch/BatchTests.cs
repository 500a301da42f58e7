using System.Text;
using System.Text.Json;
using RehabTrack.Exchange.Batch;

namespace RehabTrack.Exchange.Tests.Batch;

/// <summary>Runs small sheets through the batch analysis.</summary>
public abstract class BatchTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("rehabtrack-tests-").FullName;
    private int _runs;

    public void Dispose()
    {
        Directory.Delete(_folder, recursive: true);
        GC.SuppressFinalize(this);
    }

    protected (BatchOutcome Outcome, string Json) Run(string text, DateOnly? asOf = null, BatchOptions? options = null)
    {
        string folder = Path.Combine(_folder, $"{_runs++}");
        Directory.CreateDirectory(folder);
        using MemoryStream input = new(Encoding.UTF8.GetBytes(text));
        using MemoryStream output = new();
        BatchOutcome outcome = BatchAnalysis.Run(input, output, (options ?? Options()) with { AsOf = asOf, SpillFolder = folder });
        return (outcome, Encoding.UTF8.GetString(output.ToArray()));
    }

    protected JsonElement Analyse(string text, DateOnly? asOf = null)
    {
        (BatchOutcome outcome, string json) = Run(text, asOf);
        Assert.Null(outcome.FileProblem);
        return JsonDocument.Parse(json).RootElement;
    }

    protected static BatchOptions Options() =>
        new() { SpillFolder = "", Words = new BatchWords(problem => problem.Code, finding => finding.Kind.ToString()) };
}
