using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>Reads and writes the content of an examination.</summary>
internal static class ExaminationStore
{
    public static Task<ExaminationRecord?> FindAsync(RecordsContext records, Guid id, CancellationToken cancellation) =>
        records.Examinations.FirstOrDefaultAsync(record => record.Id == id && record.ArchivedAt == null, cancellation);

    public static Task<List<ReadingRecord>> ReadingsAsync(RecordsContext records, Guid examinationId, CancellationToken cancellation) =>
        records
            .Readings.Where(reading => reading.ExaminationId == examinationId)
            .OrderBy(reading => reading.Position)
            .ToListAsync(cancellation);

    public static ExaminationContent ContentOf(ExaminationRecord examination, IEnumerable<ReadingRecord> readings) =>
        new()
        {
            Date = examination.Date,
            Name = examination.Name,
            Stance = examination.Stance,
            Examiner = examination.Examiner,
            Transducer = examination.Transducer,
            Landmark = examination.Landmark,
            Zones = examination.Zones,
            FixedPoints = FixedPointMap.Of(examination),
            Standoff = examination.Standoff,
            Coupling = examination.Coupling,
            Clipped = examination.Clipped,
            Note = examination.Note,
            OutsidePractice = examination.OutsidePractice,
            Readings = [.. readings.Select(reading => new DraftReading(reading.Id, ReadingMap.ToDraft(reading)))],
        };

    /// <summary>
    /// Writes content into a tracked examination and its tracked readings; rows keep their identity, rows left out go. A new row may
    /// bring an identity of its own; one that is used already, anywhere, is not taken from it.
    /// </summary>
    public static async Task ApplyAsync(
        RecordsSession session,
        ExaminationRecord examination,
        List<ReadingRecord> kept,
        ExaminationContent content,
        CancellationToken cancellation
    )
    {
        examination.Date = content.Date;
        examination.Name = Filled(content.Name);
        examination.Stance = content.Stance;
        examination.Examiner = Filled(content.Examiner);
        examination.Transducer = Filled(content.Transducer);
        examination.Landmark = content.Landmark;
        examination.Zones = content.Zones;
        FixedPointMap.Apply(examination, content.FixedPoints);
        examination.Standoff = content.Standoff;
        examination.Coupling = content.Coupling;
        examination.Clipped = content.Clipped;
        examination.Note = Filled(content.Note);
        examination.OutsidePractice = Filled(content.OutsidePractice);
        examination.WrittenAt = session.Now;
        Dictionary<Guid, ReadingRecord> byId = kept.ToDictionary(reading => reading.Id);
        Guid[] brought = [.. content.Readings.Select(row => row.Id).OfType<Guid>().Where(id => !byId.ContainsKey(id))];
        HashSet<Guid> used =
            brought.Length == 0
                ? []
                :
                [
                    .. await session
                        .Records.Readings.IgnoreQueryFilters()
                        .Where(reading => brought.Contains(reading.Id))
                        .Select(reading => reading.Id)
                        .ToArrayAsync(cancellation),
                ];
        used.UnionWith(byId.Keys);
        for (int position = 0; position < content.Readings.Count; position++)
        {
            DraftReading row = content.Readings[position];
            if (row.Id is { } id && byId.Remove(id, out ReadingRecord? reading))
            {
                reading.Position = position;
                ReadingMap.Apply(reading, row.Values);
            }
            else
            {
                Guid own = row.Id is { } wanted && used.Add(wanted) ? wanted : session.NewId();
                session.Records.Readings.Add(ReadingMap.New(own, session.Practice.Id, examination.Id, position, row.Values));
            }
        }

        session.Records.Readings.RemoveRange(byId.Values);
        session.Records.Entry(examination).Property(record => record.Version).IsModified |=
            session.Records.Entry(examination).State == EntityState.Unchanged;
    }

    public static string Write(ExaminationContent content) => JsonSerializer.Serialize(content, RecordJson.Options);

    public static ExaminationContent Read(string json) => JsonSerializer.Deserialize<ExaminationContent>(json, RecordJson.Options)!;

    private static string? Filled(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
