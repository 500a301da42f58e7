using System.Reflection;
using System.Text.Json;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Referrals;

namespace RehabTrack.Records.Keeping;

/// <summary>
/// Reads what a record holds as JSON the way its use cases do, to see whether it can be read. A property whose name ends with Json and
/// that is not named here holds JSON of any shape.
/// </summary>
internal static class KeptJson
{
    private static readonly Dictionary<(Type, string), Action<object>> Readers = new()
    {
        [(typeof(PracticeRecord), nameof(PracticeRecord.SettingsJson))] = record => SettingsStore.Of((PracticeRecord)record),
        [(typeof(PracticeRecord), nameof(PracticeRecord.ErrorOriginsJson))] = record => ErrorOrigins.Of((PracticeRecord)record),
        [(typeof(CaseSummaryRecord), nameof(CaseSummaryRecord.SettingsJson))] = record =>
            JsonSerializer.Deserialize<AnalysisSettings>(((CaseSummaryRecord)record).SettingsJson, RecordJson.Options),
        [(typeof(CaseSummaryRecord), nameof(CaseSummaryRecord.FindingsJson))] = record =>
            SummaryViews.FindingsOf(((CaseSummaryRecord)record).FindingsJson),
        [(typeof(DecisionRecord), nameof(DecisionRecord.GroundJson))] = record =>
            JsonSerializer.Deserialize<DecisionGround>(((DecisionRecord)record).GroundJson, RecordJson.Options),
        [(typeof(DecisionRecord), nameof(DecisionRecord.ReleaseJson))] = record => ReleaseRows.Read(((DecisionRecord)record).ReleaseJson!),
        [(typeof(ExaminationVersionRecord), nameof(ExaminationVersionRecord.ContentJson))] = record =>
            ExaminationStore.Read(((ExaminationVersionRecord)record).ContentJson),
        [(typeof(ExerciseEntryRecord), nameof(ExerciseEntryRecord.ContentJson))] = record =>
            ExerciseRows.Read((ExerciseEntryRecord)record, ((ExerciseEntryRecord)record).Number),
        [(typeof(ExerciseEntryRecord), nameof(ExerciseEntryRecord.MoreJson))] = record => ExerciseRows.WordsOf((ExerciseEntryRecord)record),
        [(typeof(PlanDraftRecord), nameof(PlanDraftRecord.ContentJson))] = record =>
            JsonSerializer.Deserialize<PlanVersion>(((PlanDraftRecord)record).ContentJson, RecordJson.Options),
        [(typeof(ReportRecord), nameof(ReportRecord.ContentJson))] = record => ReportRows.Read((ReportRecord)record),
        [(typeof(TypedFormRecord), nameof(TypedFormRecord.FieldsJson))] = record =>
            TypedFormRows.Read(((TypedFormRecord)record).FieldsJson),
        [(typeof(ChangeRecord), nameof(ChangeRecord.AfterJson))] = record => Any(((ChangeRecord)record).AfterJson, mayBeErased: true),
        [(typeof(AppliedCommandRecord), nameof(AppliedCommandRecord.ResultJson))] = record =>
            Any(((AppliedCommandRecord)record).ResultJson, mayBeErased: true),
        [(typeof(SignedFiguresRecord), nameof(SignedFiguresRecord.FiguresJson))] = record =>
            SignedFigures.Read(((SignedFiguresRecord)record).FiguresJson),
    };

    /// <summary>Why a record cannot be read; null when it can.</summary>
    public static string? Trouble(object record)
    {
        try
        {
            foreach (PropertyInfo property in record.GetType().GetProperties())
            {
                if (property.Name.EndsWith("Json", StringComparison.Ordinal) && property.GetValue(record) is string json)
                {
                    Read(record, property.Name, json);
                }
            }

            if (record is ReadingRecord reading)
            {
                ReadingMap.ToReading(reading);
            }

            return null;
        }
        catch (Exception broken) when (broken is JsonException or NotSupportedException or InvalidOperationException or ArgumentException)
        {
            return broken.Message;
        }
    }

    private static void Read(object record, string property, string json)
    {
        if (Readers.TryGetValue((record.GetType(), property), out Action<object>? read))
        {
            read(record);
        }
        else
        {
            Any(json, mayBeErased: false);
        }
    }

    private static void Any(string json, bool mayBeErased)
    {
        if (json.Length > 0 || !mayBeErased)
        {
            using JsonDocument any = JsonDocument.Parse(json);
        }
    }
}
