using System.Globalization;
using System.Text;
using System.Text.Json;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Exchange.Batch;

/// <summary>Writes an analysis as JSON, with the names of <c>docs/analyse.md</c>. An unknown figure is null, never NaN.</summary>
public static class AnalysisJson
{
    /// <summary>Version of the shape of the output; it rises when a name changes its meaning or goes.</summary>
    public const int SchemaVersion = 1;

    /// <summary>Writes a case.</summary>
    /// <param name="json">The writer.</param>
    /// <param name="file">The case as it was read.</param>
    /// <param name="analysis">What the computation says of it.</param>
    /// <param name="words">The sentences of findings.</param>
    public static void WriteCase(Utf8JsonWriter json, CaseFile file, CaseAnalysis analysis, BatchWords words)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(words);
        json.WriteStartObject();
        json.WriteString("case", file.Label);
        json.WriteString("horse", file.Horse.Name);
        json.WriteString("limb", NullWhenEmpty(AnatomyCodes.Limbs.CodeOf(file.Course.Limb)));
        json.WriteString("structure", NullWhenEmpty(AnatomyCodes.Structures.CodeOf(file.Course.Structure)));
        json.WriteString("landmark", file.Course.Landmark is { } landmark ? AnatomyCodes.Landmarks.CodeOf(landmark) : null);
        Date(json, "onsetDate", file.Course.Onset);
        json.WriteStartArray("examinations");
        foreach (ExaminationBurden burden in analysis.Burdens)
        {
            WriteExamination(json, burden, ExaminationOf(file, burden));
        }

        json.WriteEndArray();
        json.WriteStartArray("tracks");
        foreach (Track track in analysis.Links.Tracks)
        {
            WriteTrack(json, track);
        }

        json.WriteEndArray();
        json.WritePropertyName("trend");
        WriteTrend(json, analysis.Trend);
        json.WriteStartArray("parts");
        foreach (PartBurden part in analysis.Parts)
        {
            json.WriteStartObject();
            json.WriteString("path", WordOf(part.Path));
            WriteBurdens(json, file, analysis, part.Burdens);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("lesions");
        foreach (LesionTrend lesion in analysis.Lesions)
        {
            json.WriteStartObject();
            json.WriteString("lesion", lesion.Lesion);
            json.WriteString("part", AnatomyCodes.Parts.CodeOf(lesion.Part));
            json.WritePropertyName("trend");
            WriteTrend(json, lesion.Trend);
            WriteBurdens(json, file, analysis, lesion.Burdens);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("findings");
        foreach (Finding finding in analysis.Findings)
        {
            WriteFinding(json, finding, words);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>The word of an enum member in the output: its name in lower case, words joined by hyphens.</summary>
    /// <param name="member">The member.</param>
    public static string WordOf<T>(T member)
        where T : struct, Enum => Words<T>.Of(member);

    private static void WriteExamination(Utf8JsonWriter json, ExaminationBurden burden, Examination examination)
    {
        json.WriteStartObject();
        Date(json, "date", burden.Date);
        json.WriteString("examination", examination.Name);
        json.WriteString("stance", ExamCodes.Stances.CodeOf(examination.Stance));
        if (examination.Zones is { } zones)
        {
            json.WriteString("zoneScheme", ZoneSchemes.CodeOf(zones));
        }

        WriteBurden(json, burden);
        json.WriteEndObject();
    }

    // What is the same as the whole case is not written again.
    private static void WriteBurdens(Utf8JsonWriter json, CaseFile file, CaseAnalysis analysis, IReadOnlyList<ExaminationBurden> burdens)
    {
        json.WriteStartArray("examinations");
        foreach (ExaminationBurden burden in ReferenceEquals(burdens, analysis.Burdens) ? [] : burdens)
        {
            json.WriteStartObject();
            Date(json, "date", burden.Date);
            json.WriteString("examination", ExaminationOf(file, burden).Name);
            WriteBurden(json, burden);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static Examination ExaminationOf(CaseFile file, ExaminationBurden burden) =>
        file.Course.Examinations.First(examination => Same(examination.Id, burden.ExaminationId));

    private static void WriteBurden(Utf8JsonWriter json, ExaminationBurden burden)
    {
        json.WriteStartObject("burden");
        Number(json, "volumeCm3", burden.Volume?.Value);
        Number(json, "volumeStandardError", burden.VolumeStandardError?.Value);
        json.WriteBoolean("volumeIsLowerBound", burden.VolumeIsLowerBound);
        Number(json, "totalPercent", burden.TotalPercent?.Value);
        json.WriteBoolean("levelsComplete", burden.LevelsComplete);
        Number(json, "worstPercent", burden.WorstPercent?.Value);
        At(json, "worstLevelCm", "worstZone", burden.WorstLevel);
        Number(json, "lesionLengthCm", burden.LesionLength?.Value);
        Number(json, "echogenicitySum", burden.EchogenicitySum);
        Number(json, "fibreAlignmentSum", burden.FibreAlignmentSum);
        json.WriteString("severityScale", burden.Severity?.ScaleId);
        Number(json, "severityClass", burden.Severity?.Class);
        json.WriteStartArray("lesionTracksMissed");
        foreach (string track in burden.LesionTracksMissed)
        {
            json.WriteStringValue(track);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteTrack(Utf8JsonWriter json, Track track)
    {
        json.WriteStartObject();
        json.WriteString("track", track.Id);
        json.WriteString("part", AnatomyCodes.Parts.CodeOf(track.Part));
        At(json, "consensusLevelCm", "consensusZone", track.ConsensusLevel);
        json.WriteStartArray("readings");
        foreach (TrackStep step in track.Steps)
        {
            if (step.Place.Readings is [var only])
            {
                WriteReading(json, step, only);
                continue;
            }

            foreach (Reading reading in step.Place.Readings.OrderBy(RowOf))
            {
                WriteReading(json, step, reading);
            }
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteReading(Utf8JsonWriter json, TrackStep step, Reading reading)
    {
        json.WriteStartObject();
        json.WriteNumber("row", RowOf(reading));
        Date(json, "examinationDate", step.Date);
        At(json, "levelCm", "zone", reading.Level);
        Number(json, "linkProbability", step.LinkProbability);
        json.WriteBoolean("uncertain", step.Uncertain);
        json.WriteEndObject();
    }

    private static void WriteTrend(Utf8JsonWriter json, Trend trend)
    {
        json.WriteStartObject();
        // A share of the ligament is a lesion's area in another unit: the format has four words for what was measured.
        bool isShare = trend.Measure == Measure.LesionPercent;
        Measure? measured =
            isShare ? Measure.LesionArea
            : trend.Measure is { } spoken && MeasureRules.IsExcess(spoken) ? Measure.Thickness
            : trend.Measure;
        json.WriteString("measure", measured is { } measure ? WordOf(measure) : null);
        json.WriteBoolean("isShareOfLigament", isShare);
        json.WriteBoolean("isExcessOverOtherLimb", trend.Measure == Measure.ThicknessExcess);
        json.WriteBoolean("isExcessOverOwnSoundSize", trend.Measure == Measure.ThicknessAboveOwn);
        WriteSlope(json, trend.Window);
        json.WriteString("verdict", WordOf(trend.Verdict));
        json.WriteString("reason", WordOf(trend.Reason));
        json.WriteNumber("examinationsUsed", trend.Window?.Examinations ?? trend.Series.Count(point => point.InWindow));
        Number(json, "changePercent", trend.ChangePercent);
        Number(json, "detectableRisePercent", trend.DetectableRisePercent);
        Number(json, "detectableFallPercent", trend.DetectableFallPercent);
        Number(json, "moreExaminationsToSettle", trend.MoreExaminationsToSettle);
        Date(json, "since", trend.Since);
        WriteProjection(json, trend.Projection);
        json.WriteStartObject("course");
        WriteSlope(json, trend.Course);
        json.WriteNumber("examinationsUsed", trend.Course?.Examinations ?? trend.Series.Count(point => point.InTrend));
        Number(json, "slopeLower95", trend.Course?.Lower95Log);
        Number(json, "slopeUpper95", trend.Course?.Upper95Log);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteProjection(Utf8JsonWriter json, Projection? projection)
    {
        if (projection is null)
        {
            json.WriteNull("projection");
            return;
        }

        json.WriteStartObject("projection");
        Number(json, "target", projection.Target);
        Date(json, "median", projection.Median);
        Date(json, "lower50", projection.Lower50);
        Date(json, "upper50", projection.Upper50);
        Date(json, "lower90", projection.Lower90);
        Date(json, "upper90", projection.Upper90);
        Date(json, "limit", projection.Limit);
        Number(json, "reachedByLimit", projection.ReachedByLimit);
        json.WriteEndObject();
    }

    private static void WriteSlope(Utf8JsonWriter json, SlopeFigures? slope)
    {
        Number(json, "slopeLogPer60Days", slope?.LogPer60Days);
        Number(json, "standardError", slope?.StandardError);
        Number(json, "ratePercentPer60Days", slope?.RatePercent);
        Number(json, "lower95", slope?.Lower95Percent);
        Number(json, "upper95", slope?.Upper95Percent);
    }

    private static void WriteFinding(Utf8JsonWriter json, Finding finding, BatchWords words)
    {
        json.WriteStartObject();
        json.WriteString("kind", WordOf(finding.Kind));
        json.WriteString("severity", WordOf(finding.Severity));
        json.WriteString("message", words.OfFinding(finding));
        Date(json, "date", finding.Date);
        At(json, "levelCm", "zone", finding.Level);
        json.WriteString("track", finding.TrackId);
        Number(json, "changePercent", finding.ChangePercent);
        json.WriteBoolean("mayBeMeasurementError", finding.MayBeMeasurementError);
        json.WriteEndObject();
    }

    // A zone is told by its name, beside an empty length.
    private static void At(Utf8JsonWriter json, string length, string zone, Level? level)
    {
        Number(json, length, level?.OnTape?.Value);
        if (level?.Zone is { } known)
        {
            json.WriteString(zone, known.Name);
        }
    }

    private static int RowOf(Reading reading) => int.Parse(reading.Id, NumberStyles.None, CultureInfo.InvariantCulture);

    private static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } known && double.IsFinite(known))
        {
            json.WriteNumber(name, known);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    private static void Date(Utf8JsonWriter json, string name, DateOnly? date)
    {
        if (date is not { } day)
        {
            json.WriteNull(name);
            return;
        }

        Span<char> text = stackalloc char[10];
        day.TryFormat(text, out int written, "yyyy-MM-dd", CultureInfo.InvariantCulture);
        json.WriteString(name, text[..written]);
    }

    private static string? NullWhenEmpty(string text) => text.Length == 0 ? null : text;

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.Ordinal);

    /// <summary>The words of an enumeration, made once.</summary>
    private static class Words<T>
        where T : struct, Enum
    {
        private static readonly Dictionary<T, string> ByMember = Enum.GetValues<T>().Distinct().ToDictionary(member => member, Made);

        public static string Of(T member) => ByMember[member];

        private static string Made(T member)
        {
            StringBuilder word = new();
            foreach (char letter in member.ToString())
            {
                if (char.IsUpper(letter) && word.Length > 0)
                {
                    word.Append('-');
                }

                word.Append(char.ToLowerInvariant(letter));
            }

            return word.ToString();
        }
    }
}
