using RehabTrack.Rechecks.Care;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Care;

/// <summary>Between a row of care and what the heart takes.</summary>
internal static class CareRows
{
    public static CareEntry Read(CareRecord row) =>
        new()
        {
            Kind = row.Kind,
            From = row.From,
            Until = row.Until,
            CaseId = row.CaseId is { } injury ? RecordText.Of(injury) : null,
            Grade = row.Grade,
            LamenessAaep = row.LamenessAaep,
            Context = row.Context,
            Words = row.Words,
            StandDownUntil = row.StandDownUntil,
        };

    public static void Write(CareRecord row, CareEntry entry, Guid? caseId)
    {
        row.CaseId = caseId;
        row.Kind = entry.Kind;
        row.From = entry.From;
        row.Until = entry.Until;
        row.Grade = entry.Grade;
        row.LamenessAaep = entry.LamenessAaep;
        row.Context = entry.Context;
        row.Words = entry.Words;
        row.StandDownUntil = entry.StandDownUntil;
    }
}
