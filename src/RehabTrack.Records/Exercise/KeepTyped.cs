using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>
/// Keeps a form as it is being filled in, as often as is wanted, for whoever types: it is there again after the line or the server went
/// away, on the same or another device. It counts for nothing before it is signed.
/// </summary>
public sealed class KeepTyped(RecordsAccess access) : Command<KeepTypedInput, Saved>(access)
{
    private const int MostFields = 200;

    private protected override Right Right => Right.WorkOnExercise;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        KeepTypedInput input,
        CancellationToken cancellation
    )
    {
        if (await ExerciseRows.HorseAsync(session, input.HorseId, cancellation) is null)
        {
            return RecordProblems.NotFound("horse");
        }

        TypedFormRecord? kept = await TypedFormRows.OfAsync(session, input.HorseId, input.Form, cancellation);
        OrderedDictionary<string, string> fields = Merged(input, kept);
        Checks checks = new();
        if (fields.Count > MostFields)
        {
            checks.Add(new Problem("fields", "typed-too-many", RecordText.Of(fields.Count), RecordText.Of(MostFields)));
        }

        foreach ((string name, string? text) in input.Fields)
        {
            checks.Take(Checks.Unkeepable("fields", name, Checks.LongestText));
            checks.Take(Checks.Unkeepable("fields", text ?? "", Checks.LongestText));
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        if (kept is null)
        {
            kept = new TypedFormRecord
            {
                Id = session.NewId(),
                HorseId = input.HorseId,
                PersonId = session.Person.Id,
                Form = input.Form,
                FieldsJson = "{}",
            };
            session.Records.TypedForms.Add(kept);
        }

        kept.FieldsJson = TypedFormRows.Write(fields);
        kept.ArchivedAt = fields.Count == 0 ? session.Now : null;
        kept.WrittenAt = session.Now;
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(kept.Id, kept.Version);
    }

    // Field by field: two devices of one person write into each other's forms only where both wrote the same field. The latest stands last.
    private static OrderedDictionary<string, string> Merged(KeepTypedInput input, TypedFormRecord? kept)
    {
        OrderedDictionary<string, string> fields = new(StringComparer.Ordinal);
        if (kept is not null && !input.IsAfresh)
        {
            foreach ((string name, string text) in TypedFormRows.Read(kept.FieldsJson))
            {
                fields.Add(name, text);
            }
        }

        foreach ((string name, string? text) in input.Fields)
        {
            fields.Remove(name);
            if (text is not null)
            {
                fields.Add(name, text);
            }
        }

        return fields;
    }
}
