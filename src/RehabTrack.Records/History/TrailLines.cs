using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.History;

/// <summary>Finds lines of the practice's trail.</summary>
internal static class TrailLines
{
    /// <summary>The lines that fit.</summary>
    public static IQueryable<ChangeRecord> Of(RecordsSession session, TrailFilter filter)
    {
        IQueryable<ChangeRecord> lines = session.Records.Changes.Where(line => line.Number >= 1);
        if (filter.PersonId is { } person)
        {
            lines = lines.Where(line => line.PersonId == person);
        }

        if (filter.Kind is { } kind)
        {
            lines = lines.Where(line => line.Kind == kind);
        }

        if (filter.CaseId is { } caseId)
        {
            lines = lines.Where(line => line.CaseId == caseId);
        }

        if (filter.From is { } from)
        {
            DateTime begins = BeginOf(session, from);
            lines = lines.Where(line => line.At >= begins);
        }

        if (filter.To is { } to && to < DateOnly.MaxValue)
        {
            DateTime ends = BeginOf(session, to.AddDays(1));
            lines = lines.Where(line => line.At < ends);
        }

        if (filter.Before is { } before)
        {
            lines = lines.Where(line => line.Number < before);
        }

        return lines;
    }

    /// <summary>The kinds of lines there can be.</summary>
    public static IReadOnlyList<string> KindsOf(RecordsContext records) =>
        [
            .. records
                .Model.GetEntityTypes()
                .Where(type => HistoryInterceptor.IsTold(type.ClrType))
                .Select(type => HistoryInterceptor.KindOf(type.ClrType))
                .Append(AccessLine.Kind)
                .Append(Erasure.Kind)
                .Order(StringComparer.Ordinal),
        ];

    private static DateTime BeginOf(RecordsSession session, DateOnly day) =>
        PracticeTime.InstantOf(day, TimeOnly.MinValue, session.Practice.TimeZone);
}
