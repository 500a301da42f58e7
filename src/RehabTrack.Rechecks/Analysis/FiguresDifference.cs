using System.Text.Json;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Rechecks.Analysis;

/// <summary>
/// What a person saw when signing, against what the analysis says today: first what is another now, then what may have made it so.
/// Later examinations move consensus positions, so that earlier figures shift a little: a value counts as another only when it differs
/// by more than its standard error.
/// </summary>
public sealed record FiguresDifference
{
    private static readonly JsonSerializerOptions AsInTables = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    /// <summary>One an examination that had a value then, in order of date.</summary>
    public required IReadOnlyList<ValueDifference> Values { get; init; }

    /// <summary>Whether the verdict is another.</summary>
    public required bool IsOtherVerdict { get; init; }

    /// <summary>Whether another measure speaks.</summary>
    public required bool IsOtherMeasure { get; init; }

    /// <summary>Whether another version of the engine computes.</summary>
    public required bool IsOtherEngine { get; init; }

    /// <summary>The settings that are others, by table and name; those of the rules that suggest do not enter the figures.</summary>
    public required IReadOnlyList<SettingDifference> Settings { get; init; }

    /// <summary>The places of then that are held to be another place today, in order of date and level.</summary>
    public required IReadOnlyList<PlaceKey> Relinked { get; init; }

    /// <summary>Examinations that were not there then, by date.</summary>
    public required IReadOnlyList<SeenExamination> Added { get; init; }

    /// <summary>Examinations that say something else than then, as they are today, by date.</summary>
    public required IReadOnlyList<SeenExamination> Amended { get; init; }

    /// <summary>Examinations that no longer count, by date.</summary>
    public required IReadOnlyList<SeenExamination> Gone { get; init; }

    /// <summary>Words on links that were said since.</summary>
    public required int WordsGiven { get; init; }

    /// <summary>Words on links that were withdrawn since.</summary>
    public required int WordsWithdrawn { get; init; }

    /// <summary>Whether limb, structure, landmark, onset, re-injury or target of the case was changed.</summary>
    public required bool IsOtherCase { get; init; }

    /// <summary>Whether today's differ: a value by more than its standard error, the verdict, measure, engine, settings or links.</summary>
    public bool Any =>
        IsOtherVerdict
        || IsOtherMeasure
        || IsOtherEngine
        || Settings.Count > 0
        || Relinked.Count > 0
        || Values.Any(value => value.IsBeyondError);

    /// <summary>Whether nothing was changed of what was seen: there are only more examinations than then.</summary>
    public bool IsOnlyMore =>
        !IsOtherEngine
        && Settings.Count == 0
        && Amended.Count == 0
        && Gone.Count == 0
        && WordsGiven == 0
        && WordsWithdrawn == 0
        && !IsOtherCase;

    /// <summary>Lays one against the other.</summary>
    /// <param name="then">What was seen.</param>
    /// <param name="today">What would be seen today, of the same case.</param>
    public static FiguresDifference Between(SeenFigures then, SeenFigures today)
    {
        ArgumentNullException.ThrowIfNull(then);
        ArgumentNullException.ThrowIfNull(today);
        bool otherMeasure = then.Measure != today.Measure;
        Dictionary<string, SeenValue> values = otherMeasure ? [] : today.Values.ToDictionary(value => value.ExaminationId);
        Dictionary<string, SeenExamination> before = then.Examinations.ToDictionary(one => one.ExaminationId);
        Dictionary<string, SeenExamination> now = today.Examinations.ToDictionary(one => one.ExaminationId);
        return new FiguresDifference
        {
            Values = [.. then.Values.Select(value => new ValueDifference(value, values.GetValueOrDefault(value.ExaminationId)))],
            IsOtherVerdict = then.Verdict != today.Verdict,
            IsOtherMeasure = otherMeasure,
            IsOtherEngine = then.EngineVersion != today.EngineVersion,
            Settings =
            [
                .. Differences("measurement-error", then.Settings.Error, today.Settings.Error),
                .. Differences("linking", then.Settings.Linking, today.Settings.Linking),
                .. Differences("trend", then.Settings.Trend, today.Settings.Trend),
            ],
            Relinked = RelinkedPlaces(then, today),
            Added = [.. today.Examinations.Where(one => !before.ContainsKey(one.ExaminationId))],
            Amended =
            [
                .. today.Examinations.Where(one =>
                    before.TryGetValue(one.ExaminationId, out SeenExamination? was) && was.Fingerprint != one.Fingerprint
                ),
            ],
            Gone = [.. then.Examinations.Where(one => !now.ContainsKey(one.ExaminationId))],
            WordsGiven = today.LinkWords.Except(then.LinkWords).Count(),
            WordsWithdrawn = then.LinkWords.Except(today.LinkWords).Count(),
            IsOtherCase = then.CaseFingerprint != today.CaseFingerprint,
        };
    }

    private static IEnumerable<SettingDifference> Differences<T>(string table, T then, T today)
    {
        JsonElement now = JsonSerializer.SerializeToElement(today, AsInTables);
        foreach (JsonProperty was in JsonSerializer.SerializeToElement(then, AsInTables).EnumerateObject())
        {
            JsonElement value = now.GetProperty(was.Name);
            if (was.Value.GetRawText() != value.GetRawText())
            {
                yield return new SettingDifference(table, was.Name, NumberOf(was.Value), NumberOf(value));
            }
        }
    }

    private static double? NumberOf(JsonElement value) => value.ValueKind == JsonValueKind.Number ? value.GetDouble() : null;

    // A place stays where its track of then and its track of today are each other's heirs: each holds most of what the other held, among
    // the places that both know.
    private static IReadOnlyList<PlaceKey> RelinkedPlaces(SeenFigures then, SeenFigures today)
    {
        Dictionary<PlaceKey, int> tracks = [];
        foreach ((int index, SeenTrack track) in today.Links.Index())
        {
            foreach (PlaceKey place in track.Places)
            {
                tracks[place] = index;
            }
        }

        (PlaceKey Place, int Then, int Today)[] known =
        [
            .. then
                .Links.Index()
                .SelectMany(track => track.Item.Places.Where(tracks.ContainsKey).Select(place => (place, track.Index, tracks[place]))),
        ];
        Dictionary<int, int> heirs = Heirs(known.Select(one => (one.Then, one.Today)));
        Dictionary<int, int> forebears = Heirs(known.Select(one => (one.Today, one.Then)));
        Dictionary<string, DateOnly> dates = then.Examinations.ToDictionary(one => one.ExaminationId, one => one.Date);
        return
        [
            .. known
                .Where(one => heirs[one.Then] != one.Today || forebears[one.Today] != one.Then)
                .Select(one => one.Place)
                .OrderBy(place => dates[place.ExaminationId])
                .ThenBy(place => place.ExaminationId, StringComparer.Ordinal)
                .ThenBy(place => place.Path)
                .ThenBy(place => place.Level),
        ];
    }

    // The first of those that hold most; a group keeps the order in which its members come.
    private static Dictionary<int, int> Heirs(IEnumerable<(int From, int To)> pairs) =>
        pairs
            .GroupBy(pair => pair.From)
            .ToDictionary(group => group.Key, group => group.GroupBy(pair => pair.To).MaxBy(heir => heir.Count())!.Key);
}
