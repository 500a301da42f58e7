using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Repeats;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Repeats;

/// <summary>Reads the repeat tracings of the practice.</summary>
internal static class RepeatRows
{
    public static Task<List<RepeatTracingRecord>> EnteredAsync(RecordsContext records, CancellationToken cancellation) =>
        records
            .RepeatTracings.AsNoTracking()
            .Where(record => record.ArchivedAt == null)
            .OrderBy(record => record.Id)
            .ToListAsync(cancellation);

    public static RepeatTracing ToTracing(RepeatTracingRecord record) =>
        new(record.Subject, record.Kind, record.Size, record.Measurer, record.Value);

    /// <summary>Tracings of one level that an examination holds more than once, by repeat: the same image traced anew.</summary>
    public static async Task<IReadOnlyList<RepeatTracing>> FromExaminationsAsync(RecordsContext records, CancellationToken cancellation)
    {
        var rows = await (
            from reading in records.Readings.AsNoTracking()
            join examination in records.Examinations on reading.ExaminationId equals examination.Id
            join injury in records.Cases on examination.CaseId equals injury.Id
            join horse in records.Horses on injury.HorseId equals horse.Id
            where reading.Repeat != null && examination.ArchivedAt == null && examination.State != ExaminationState.Draft
            orderby examination.Date, reading.ExaminationId, reading.Position
            select new
            {
                horse.Name,
                examination.Date,
                reading,
            }
        ).ToListAsync(cancellation);
        return
        [
            .. rows.SelectMany(row =>
                Sizes(row.reading)
                    .Select(size => new RepeatTracing(
                        $"{row.Name}, {RecordText.Of(row.Date)}, {RecordText.Of(row.reading.Part)} {row.reading.Zone ?? $"{RecordText.Of(row.reading.LevelCm)} cm"} {row.reading.Plane} {row.reading.Lesion}".TrimEnd(),
                        RepeatKind.SameImage,
                        size.Size,
                        row.reading.Measurer,
                        size.Value
                    ))
            ),
        ];
    }

    public static async Task<IReadOnlyList<RepeatStudy>> StudiesAsync(RecordsContext records, CancellationToken cancellation) =>
        RepeatStudy.Of(
            (await EnteredAsync(records, cancellation)).Select(ToTracing).Concat(await FromExaminationsAsync(records, cancellation))
        );

    private static IEnumerable<(MeasuredSize Size, double Value)> Sizes(ReadingRecord reading)
    {
        (MeasuredSize Size, double? Value)[] sizes =
        [
            (MeasuredSize.LigamentArea, reading.LigamentAreaCm2),
            (MeasuredSize.LesionArea, reading.LesionAreaCm2),
            (MeasuredSize.Thickness, reading.ThicknessCm),
            (MeasuredSize.Width, reading.WidthCm),
        ];
        return sizes.Where(size => size.Value is not null).Select(size => (size.Size, size.Value!.Value));
    }
}
