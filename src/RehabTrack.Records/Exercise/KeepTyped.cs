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

        Checks checks = new();
        if (input.Fields.Count > MostFields)
        {
            checks.Add(new Problem("fields", "typed-too-many", RecordText.Of(input.Fields.Count), RecordText.Of(MostFields)));
        }

        foreach ((string name, string text) in input.Fields)
        {
            checks.Take(Checks.Unkeepable("fields", name, Checks.LongestText));
            checks.Take(Checks.Unkeepable("fields", text, Checks.LongestText));
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        TypedFormRecord? kept = await TypedFormRows.OfAsync(session, input.HorseId, input.Form, cancellation);
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

        kept.FieldsJson = TypedFormRows.Write(input.Fields);
        kept.ArchivedAt = input.Fields.Count == 0 ? session.Now : null;
        kept.WrittenAt = session.Now;
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(kept.Id, kept.Version);
    }
}
