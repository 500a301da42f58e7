using System.Globalization;
using RehabTrack.Exchange.Batch;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Wording;

namespace RehabTrack.Web.Commands;

/// <summary>
/// <c>analyse INPUT.csv --out OUTPUT.json [--settings FILE] [--as-of DATE]</c>: every case of a sheet as JSON. Touches no database and
/// never reads the clock; messages go to standard error.
/// </summary>
public static class AnalyseCommand
{
    /// <summary>Runs the command.</summary>
    /// <param name="words">What follows <c>analyse</c>.</param>
    /// <param name="messages">Takes what a person is told.</param>
    /// <param name="cancellation">Interrupts it.</param>
    public static int Run(IReadOnlyList<string> words, TextWriter messages, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(messages);
        if (AnalyseArguments.Parse(words, out string refusal) is not { } arguments)
        {
            messages.WriteLine(refusal);
            return ExitCodes.Refused;
        }

        try
        {
            return Analyse(arguments, messages, cancellation);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            messages.WriteLine(Text(AnalyseTexts.FileTrouble, exception.Message));
            return ExitCodes.Refused;
        }
        catch (OperationCanceledException)
        {
            messages.WriteLine(AnalyseTexts.Interrupted);
            return ExitCodes.Interrupted;
        }
    }

    private static int Analyse(AnalyseArguments arguments, TextWriter messages, CancellationToken cancellation)
    {
        if (!File.Exists(arguments.Input))
        {
            return Tell(messages, [new Problem("", "file-not-found", arguments.Input)]);
        }

        string output = Resolved(arguments.Output);
        if (output == Resolved(arguments.Input) || (arguments.Settings is { } read && output == Resolved(read)))
        {
            messages.WriteLine(AnalyseTexts.SameFile);
            return ExitCodes.Refused;
        }

        if (ReadSettings(arguments.Settings, messages) is not { } settings)
        {
            return ExitCodes.Refused;
        }

        string spill = Directory.CreateTempSubdirectory("rehabtrack-").FullName;
        string unfinished = $"{output}.unfinished-{Environment.ProcessId.ToString(CultureInfo.InvariantCulture)}";
        try
        {
            BatchOutcome outcome;
            using (FileStream input = new(arguments.Input, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16))
            using (FileStream written = new(unfinished, FileMode.Create, FileAccess.Write, FileShare.None, 1 << 16))
            {
                outcome = BatchAnalysis.Run(
                    input,
                    written,
                    new BatchOptions
                    {
                        Settings = settings,
                        AsOf = arguments.AsOf,
                        SpillFolder = spill,
                        Words = new BatchWords(problem => ProblemSentences.Of(problem), finding => FindingSentences.Of(finding)),
                    },
                    cancellation
                );
            }

            if (outcome.FileProblem is { } problem)
            {
                return Tell(messages, [problem]);
            }

            File.Move(unfinished, output, overwrite: true);
            Report(messages, outcome, arguments.Output);
            return ExitCodes.Done;
        }
        finally
        {
            File.Delete(unfinished);
            Directory.Delete(spill, recursive: true);
        }
    }

    // Where a name truly leads: a link to the input is the input.
    private static string Resolved(string path) =>
        (File.Exists(path) ? File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName : null) ?? Path.GetFullPath(path);

    private static AnalysisSettings? ReadSettings(string? path, TextWriter messages)
    {
        if (path is null)
        {
            return new AnalysisSettings();
        }

        if (!File.Exists(path))
        {
            Tell(messages, [new Problem("", "file-not-found", path)]);
            return null;
        }

        SettingsReading reading = SettingsFile.Read(File.ReadAllBytes(path));
        Tell(messages, reading.Problems);
        return reading.Settings;
    }

    private static int Tell(TextWriter messages, IEnumerable<Problem> problems)
    {
        foreach (Problem problem in problems)
        {
            messages.WriteLine(ProblemSentences.Of(problem));
        }

        return ExitCodes.Refused;
    }

    private static void Report(TextWriter messages, BatchOutcome outcome, string output)
    {
        Tell(messages, outcome.Cautions);
        if (outcome.Rows == 0)
        {
            Tell(messages, [new Problem("", "no-rows")]);
        }

        messages.WriteLine(Text(AnalyseTexts.Summary, outcome.Rows, outcome.Accepted, outcome.Cases, output));
        if (outcome.Rejected > 0)
        {
            messages.WriteLine(Text(AnalyseTexts.SomeRejected, outcome.Rejected));
        }

        if (outcome.AfterAsOf > 0)
        {
            messages.WriteLine(Text(AnalyseTexts.SomeAfterAsOf, outcome.AfterAsOf));
        }
    }

    private static string Text(string text, params object[] arguments) => string.Format(TextCulture.Default, text, arguments);
}
