using System.Text.RegularExpressions;
using RehabTrack.Records.History;
using RehabTrack.Web.Components.Audit;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Cases;

/// <summary>One line of the history, as a person reads it.</summary>
/// <param name="What">What was done.</param>
/// <param name="By">Who did it.</param>
/// <param name="At">When, UTC; the last time where several savings of one draft stand together.</param>
/// <param name="Fields">What changed, field by field.</param>
public sealed partial record ChangeLine(string What, string By, DateTime At, IReadOnlyList<string> Fields)
{
    /// <summary>Its number in the trail; of several savings that stand together that of the last.</summary>
    public long Number { get; init; }

    private const string Savings = "SaveDraft";

    /// <summary>The lines of a history, latest first. Savings of one draft by one person, one after the other, are one line.</summary>
    public static IReadOnlyList<ChangeLine> Of(IReadOnlyList<ChangeView> changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        List<List<ChangeView>> groups = [];
        foreach (ChangeView change in changes)
        {
            if (
                groups is [.., [.., var last]]
                && last.UseCase == Savings
                && change.UseCase == Savings
                && last.By == change.By
                && last.RecordId == change.RecordId
            )
            {
                groups[^1].Add(change);
            }
            else
            {
                groups.Add([change]);
            }
        }

        return [.. groups.Select(Of)];
    }

    /// <summary>Every line by itself, in the order given.</summary>
    public static IReadOnlyList<ChangeLine> Each(IReadOnlyList<ChangeView> changes) => [.. changes.Select(change => Of([change]))];

    private static ChangeLine Of(List<ChangeView> group) =>
        new(
            Title(group[0]),
            group[0].By.Length > 0 ? group[0].By : TrailTexts.NobodyKnown,
            group[0].At,
            group[0].IsErased ? [TrailTexts.WordsErased] : FieldsOf(group)
        )
        {
            Number = group[0].Number,
        };

    private static string Title(ChangeView change) =>
        AccessTitle(change)
        ?? ChangeWords.DoneBy(change.UseCase)
        ?? string.Format(TextCulture.Default, change.IsNew ? CasePage.DidAdd : CasePage.DidChange, ChangeWords.Kind(change.Kind));

    private static string? AccessTitle(ChangeView change) =>
        change.Event switch
        {
            null => null,
            AccessEvent.RightRefused => string.Format(
                TextCulture.Default,
                TrailTexts.Refused,
                AccessEventNames.Of(AccessEvent.RightRefused),
                ChangeWords.DoneBy(change.UseCase) ?? change.UseCase
            ),
            { } what => AccessEventNames.Of(what),
        };

    private static string[] FieldsOf(List<ChangeView> group) =>
        [
            .. group
                .SelectMany((change, index) => change.Fields.Select(field => (Field: field, Age: index)))
                .Where(one => ChangeWords.IsTold(one.Field.Field))
                .GroupBy(one => one.Field.Field, StringComparer.Ordinal)
                .Select(field =>
                    (Name: field.Key, Before: field.MaxBy(one => one.Age).Field.Before, After: field.MinBy(one => one.Age).Field.After)
                )
                .Where(field => field.Before != field.After)
                .Select(field =>
                    string.Format(
                        TextCulture.Default,
                        CasePage.FieldChanged,
                        NameOf(field.Name),
                        ChangeWords.Value(group[0].Kind, field.Name, field.Before) ?? CasePage.Nothing,
                        ChangeWords.Value(group[0].Kind, field.Name, field.After) ?? CasePage.Nothing
                    )
                ),
        ];

    private static string NameOf(string field)
    {
        Match reading = ReadingField().Match(field);
        return reading.Success
            ? string.Format(
                TextCulture.Default,
                // A level in cm ends with a digit, the name of a zone with a letter.
                reading.Groups["place"].Value
                    is [.., var end]
                && char.IsLetter(end)
                    ? CasePage.FieldOfZone
                    : CasePage.FieldOfReading,
                reading.Groups["place"].Value,
                ChangeWords.Field(reading.Groups["field"].Value)
            )
            : ChangeWords.Field(field);
    }

    [GeneratedRegex(@"^readings\[(?<place>[^\]]*)\]\.(?<field>.+)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex ReadingField();
}
