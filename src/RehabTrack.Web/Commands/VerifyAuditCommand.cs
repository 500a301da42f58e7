using RehabTrack.Records.History;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Start;
using RehabTrack.Web.Components.Audit;
using RehabTrack.Wording;

namespace RehabTrack.Web.Commands;

/// <summary>
/// <c>verify-audit --data FOLDER [--from FILE] [--expect NUMBER:HASH]</c>: walks along the trails of a database and names the first line
/// that does not fit. It changes nothing. The note of each trail's last line goes to standard output, sentences to standard error.
/// </summary>
public static class VerifyAuditCommand
{
    /// <summary>Exit code when every line fits.</summary>
    public const int Fits = 0;

    /// <summary>Exit code when a line does not fit.</summary>
    public const int Broken = 1;

    /// <summary>Exit code when the command line, a file or the database cannot be used as such.</summary>
    public const int Refused = 2;

    /// <summary>Exit code when it was interrupted.</summary>
    public const int Interrupted = 130;

    /// <summary>Runs the command.</summary>
    /// <param name="words">What follows <c>verify-audit</c>.</param>
    /// <param name="notes">Takes the notes of the last lines, one a line.</param>
    /// <param name="messages">Takes what a person is told.</param>
    /// <param name="cancellation">Interrupts it.</param>
    public static async Task<int> RunAsync(
        IReadOnlyList<string> words,
        TextWriter notes,
        TextWriter messages,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(notes);
        ArgumentNullException.ThrowIfNull(messages);
        if (VerifyAuditArguments.Parse(words, out string refusal) is not { } arguments)
        {
            await messages.WriteLineAsync(refusal);
            return Refused;
        }

        try
        {
            return await VerifyAsync(arguments, notes, messages, cancellation);
        }
        catch (StartException refused)
        {
            await messages.WriteLineAsync(refused.Message);
            return Refused;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            await messages.WriteLineAsync(Text(VerifyAuditTexts.FileTrouble, exception.Message));
            return Refused;
        }
        catch (OperationCanceledException)
        {
            await messages.WriteLineAsync(VerifyAuditTexts.Interrupted);
            return Interrupted;
        }
    }

    private static async Task<int> VerifyAsync(
        VerifyAuditArguments arguments,
        TextWriter notes,
        TextWriter messages,
        CancellationToken cancellation
    )
    {
        List<TrailNote> from = [];
        foreach (string line in arguments.From is { } file ? await File.ReadAllLinesAsync(file, cancellation) : [])
        {
            if (string.IsNullOrWhiteSpace(line))
            {
                continue;
            }

            if (TrailNote.Parse(line) is not { } note)
            {
                await messages.WriteLineAsync(Text(VerifyAuditTexts.NoteUnreadable, line));
                return Refused;
            }

            from.Add(note);
        }

        ServiceCollection services = new();
        services.AddRecords();
        services.AddSqliteRecords(arguments.Folder);
        await using ServiceProvider provider = services.BuildServiceProvider();
        await provider.GetRequiredService<SqliteStart>().LookAsync(cancellation);
        VerifyTrail verify = provider.GetRequiredService<VerifyTrail>();
        TrailNote[] expected = arguments.Expected is { } one ? [one] : [];
        IReadOnlyList<Guid> practices = await verify.PracticesAsync(cancellation);
        if (practices.Count != 1 && expected.Concat(from).FirstOrDefault(note => note.PracticeId is null) is { } unnamed)
        {
            await messages.WriteLineAsync(Text(VerifyAuditTexts.NotePractice, practices.Count, unnamed));
            return Refused;
        }

        IReadOnlyList<TrailCheck> checks = await verify.RunAsync(expected, from, cancellation);
        foreach (TrailCheck check in checks)
        {
            if (check is { End: { } end, FirstBreak: null })
            {
                await notes.WriteLineAsync(new TrailNote(check.PracticeId, end).ToString());
            }

            await messages.WriteLineAsync(Sentence(check));
        }

        return checks.Any(check => check.FirstBreak is not null) ? Broken : Fits;
    }

    private static string Sentence(TrailCheck check)
    {
        string practice = check.Practice.Length > 0 ? check.Practice : VerifyAuditTexts.NoPractice;
        return check switch
        {
            { FirstBreak: { } broken } => Text(VerifyAuditTexts.FirstBreak, practice, check.Lines, TrailFaults.Sentence(broken)),
            { End: null } => Text(VerifyAuditTexts.NoLines, practice),
            _ => Text(VerifyAuditTexts.AllFit, practice, check.Lines),
        };
    }

    private static string Text(string text, params object[] arguments) => string.Format(TextCulture.Default, text, arguments);
}
