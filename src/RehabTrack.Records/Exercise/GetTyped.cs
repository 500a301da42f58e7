using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>What is being typed into a form of a horse: by the one who asks, first, and by others, latest first.</summary>
public sealed class GetTyped(RecordsAccess access) : UseCase<GetTypedInput, IReadOnlyList<TypedView>>(access)
{
    private protected override Right Right => Right.WorkOnExercise;

    private protected override async Task<Outcome<IReadOnlyList<TypedView>>> RunAsync(
        RecordsSession session,
        GetTypedInput input,
        CancellationToken cancellation
    )
    {
        if (await ExerciseRows.HorseAsync(session, input.HorseId, cancellation) is null)
        {
            return RecordProblems.NotFound("horse");
        }

        List<TypedFormRecord> kept = await session
            .Records.TypedForms.AsNoTracking()
            .Where(form => form.HorseId == input.HorseId && form.Form == input.Form && form.ArchivedAt == null)
            .OrderByDescending(form => form.WrittenAt)
            .ToListAsync(cancellation);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            session.Records,
            [.. kept.Select(form => (Guid?)form.PersonId)],
            cancellation
        );
        return Outcome<IReadOnlyList<TypedView>>.Of(
            [
                .. kept.Select(form => new TypedView(
                        form.PersonId == session.Person.Id,
                        PersonNames.Name(names, form.PersonId) ?? "",
                        form.WrittenAt,
                        TypedFormRows.Read(form.FieldsJson)
                    ))
                    .OrderByDescending(form => form.IsOwn),
            ],
            []
        );
    }
}
