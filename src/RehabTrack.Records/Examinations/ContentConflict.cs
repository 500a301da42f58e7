using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>Tells the kept content of an examination and an entered one apart, field by field.</summary>
internal static class ContentConflict
{
    /// <summary>One problem a field that differs; rows are matched by identity, and named by their place in what was entered.</summary>
    public static List<Problem> Between(ExaminationContent kept, ExaminationContent entered)
    {
        Conflict conflict = new Conflict()
            .Field("date", kept.Date, entered.Date)
            .Field("name", kept.Name, entered.Name)
            .Field("stance", kept.Stance, entered.Stance)
            .Field("examiner", kept.Examiner, entered.Examiner)
            .Field("transducer", kept.Transducer, entered.Transducer)
            .Field("landmark", kept.Landmark, entered.Landmark)
            .Field("zones", kept.Zones, entered.Zones)
            .Field("fixedPoints", TextOf(kept), TextOf(entered))
            .Field("standoff", kept.Standoff, entered.Standoff)
            .Field("coupling", kept.Coupling, entered.Coupling)
            .Field("clipped", kept.Clipped, entered.Clipped)
            .Field("note", kept.Note, entered.Note)
            .Field("outsidePractice", kept.OutsidePractice, entered.OutsidePractice);
        Dictionary<Guid, DraftReading> byId = kept.Readings.ToDictionary(reading => reading.Id!.Value);
        for (int index = 0; index < entered.Readings.Count; index++)
        {
            DraftReading row = entered.Readings[index];
            DraftReading? was = row.Id is { } id && byId.Remove(id, out DraftReading? found) ? found : null;
            Row(conflict, $"readings[{RecordText.Of(index)}]", was, row);
        }

        int next = entered.Readings.Count;
        foreach (DraftReading gone in byId.Values)
        {
            Row(conflict, $"readings[{RecordText.Of(next++)}]", gone, null);
        }

        return conflict.Problems;
    }

    private static string? TextOf(ExaminationContent content) =>
        content.FixedPoints.Count == 0
            ? null
            : string.Join(
                "; ",
                content
                    .FixedPoints.OrderBy(point => point.Kind)
                    .Select(point => $"{FixedPointRules.FieldOf(point.Kind)} {RecordText.Of(point.Level.Value)}")
            );

    private static void Row(Conflict conflict, string path, DraftReading? kept, DraftReading? entered)
    {
        foreach (((string field, object? was), (_, object? isNow)) in ReadingValues.Of(kept?.Values).Zip(ReadingValues.Of(entered?.Values)))
        {
            conflict.Field($"{path}.{field}", was, isNow);
        }
    }
}
