using System.Globalization;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Repeats;
using RehabTrack.Records.Repeats;

namespace RehabTrack.Web.Features.OwnError;

/// <summary>Reads repeats as lines: subject; kind; size; measurer; values. A line without a word is passed over.</summary>
public static class RepeatLines
{
    private static readonly IReadOnlyDictionary<string, RepeatKind> Kinds = new Dictionary<string, RepeatKind>(StringComparer.Ordinal)
    {
        [FoldedText.Of("day")] = RepeatKind.SameHorseAndDay,
        [FoldedText.Of("image")] = RepeatKind.SameImage,
    };

    private static readonly IReadOnlyDictionary<string, MeasuredSize> Sizes = new Dictionary<string, MeasuredSize>(StringComparer.Ordinal)
    {
        [FoldedText.Of("ligament area")] = MeasuredSize.LigamentArea,
        [FoldedText.Of("lesion area")] = MeasuredSize.LesionArea,
        [FoldedText.Of("thickness")] = MeasuredSize.Thickness,
        [FoldedText.Of("width")] = MeasuredSize.Width,
    };

    /// <summary>The repeats of a text, and all that is wrong with it; a problem's field is the number of its line, from 1.</summary>
    public static (IReadOnlyList<RepeatTracing> Tracings, IReadOnlyList<Problem> Problems) Read(string? text)
    {
        List<RepeatTracing> tracings = [];
        List<Problem> problems = [];
        foreach ((int index, string line) in (text ?? "").ReplaceLineEndings("\n").Split('\n').Index())
        {
            if (!string.IsNullOrWhiteSpace(line))
            {
                ReadLine(line, (index + 1).ToString(CultureInfo.InvariantCulture), tracings, problems);
            }
        }

        return (tracings, problems);
    }

    /// <summary>The repeats of one person and one subject, and all that is wrong with them.</summary>
    /// <param name="field">What names them in a problem.</param>
    /// <param name="subject">The subject.</param>
    /// <param name="kind">What was done anew.</param>
    /// <param name="size">What was measured.</param>
    /// <param name="measurer">Who measured.</param>
    /// <param name="values">The values, with spaces between.</param>
    public static (IReadOnlyList<RepeatTracing> Tracings, IReadOnlyList<Problem> Problems) Read(
        string field,
        string? subject,
        RepeatKind kind,
        MeasuredSize size,
        string? measurer,
        string? values
    )
    {
        List<RepeatTracing> tracings = [];
        List<Problem> problems = [];
        string[] words = (values ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        foreach (string word in words)
        {
            if (!DecimalText.TryRead(word, out double value, out _))
            {
                problems.Add(new Problem(field, "repeat-value-unreadable", word));
                continue;
            }

            RepeatTracing tracing = new(
                subject?.Trim() ?? "",
                kind,
                size,
                string.IsNullOrWhiteSpace(measurer) ? null : measurer.Trim(),
                value
            );
            problems.AddRange(RepeatRules.Check(tracing, field));
            tracings.Add(tracing);
        }

        if (words.Length == 0)
        {
            problems.Add(new Problem(field, "repeats-none"));
        }

        return (tracings, [.. problems.DistinctBy(problem => (problem.Code, string.Join('|', problem.Arguments)))]);
    }

    private static void ReadLine(string line, string number, List<RepeatTracing> tracings, List<Problem> problems)
    {
        string[] parts = line.Split(';', StringSplitOptions.TrimEntries);
        if (parts.Length != 5)
        {
            problems.Add(new Problem(number, "repeat-line-unreadable"));
            return;
        }

        bool isKind = Kinds.TryGetValue(FoldedText.Of(parts[1]), out RepeatKind kind);
        bool isSize = Sizes.TryGetValue(FoldedText.Of(parts[2]), out MeasuredSize size);
        if (!isKind)
        {
            problems.Add(new Problem(number, "repeat-kind-unknown", parts[1]));
        }

        if (!isSize)
        {
            problems.Add(new Problem(number, "repeat-size-unknown", parts[2]));
        }

        if (isKind && isSize)
        {
            (IReadOnlyList<RepeatTracing> read, IReadOnlyList<Problem> wrong) = Read(number, parts[0], kind, size, parts[3], parts[4]);
            tracings.AddRange(read);
            problems.AddRange(wrong);
        }
    }
}
