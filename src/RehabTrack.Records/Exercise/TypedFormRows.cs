using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>Reads and writes forms as they are being filled in.</summary>
internal static class TypedFormRows
{
    public static IReadOnlyDictionary<string, string> Read(string json) =>
        JsonSerializer.Deserialize<OrderedDictionary<string, string>>(json, RecordJson.Options)!;

    public static string Write(IReadOnlyDictionary<string, string> fields) => JsonSerializer.Serialize(fields, RecordJson.Options);

    public static Task<TypedFormRecord?> OfAsync(RecordsSession session, Guid horseId, TypedForm form, CancellationToken cancellation) =>
        session.Records.TypedForms.FirstOrDefaultAsync(
            record => record.HorseId == horseId && record.Form == form && record.PersonId == session.Person.Id,
            cancellation
        );

    /// <summary>What was typed was signed, or thrown away: nothing of it is kept.</summary>
    public static void PutAway(RecordsSession session, TypedFormRecord? kept)
    {
        if (kept is { ArchivedAt: null })
        {
            kept.FieldsJson = "{}";
            kept.ArchivedAt = session.Now;
        }
    }
}
