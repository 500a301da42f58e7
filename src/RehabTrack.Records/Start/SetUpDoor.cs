using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Start;

/// <summary>
/// The first run: makes the practice and the first person who may sign in, once, while nobody has a password yet. Whoever asks must show that
/// they run the server; that is for the page to see to.
/// </summary>
public sealed class SetUpDoor(RecordsAccess access)
{
    /// <summary>What is there; null when somebody can sign in already and there is nothing to set up.</summary>
    public async Task<SetUpView?> FindAsync(CancellationToken cancellation = default)
    {
        await using RecordsContext all = await access.OpenAsync(Guid.Empty, null, cancellation);
        if (await IsDoneAsync(all, cancellation))
        {
            return null;
        }

        if (await FirstPersonAsync(all, cancellation) is not { } person)
        {
            return new SetUpView(null, null);
        }

        string practice = await all
            .Practices.IgnoreQueryFilters()
            .Where(record => record.Id == person.PracticeId)
            .Select(record => record.Name)
            .SingleAsync(cancellation);
        return new SetUpView(practice, person.Name);
    }

    /// <summary>What is wrong with both, before anything is made: a page says it together with what it sees itself.</summary>
    public async Task<IReadOnlyList<Problem>> LookAsync(FirstPractice first, AccountChoice choice, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(choice);
        await using RecordsContext all = await access.OpenAsync(Guid.Empty, null, cancellation);
        return (await LookedAsync(all, await FirstPersonAsync(all, cancellation), first, choice, cancellation)).Problems;
    }

    /// <summary>Makes both, or hands a practice that is there to its first person.</summary>
    /// <param name="first">What a new practice begins with; not looked at where there is one already.</param>
    /// <param name="choice">What the person signs in with.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<Outcome<Actor>> RunAsync(FirstPractice first, AccountChoice choice, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(choice);
        PersonRecord? person;
        await using (RecordsContext all = await access.OpenAsync(Guid.Empty, null, cancellation))
        {
            if (await IsDoneAsync(all, cancellation))
            {
                return RecordProblems.NotAllowed;
            }

            person = await FirstPersonAsync(all, cancellation);
            // Looked at before a practice is made: one that is made and cannot be entered helps nobody.
            Checks checks = await LookedAsync(all, person, first, choice, cancellation);
            if (checks.Any)
            {
                return checks.Problems;
            }
        }

        Actor actor = person is null
            ? await FoundAsync(first, cancellation)
            : new Actor(person.PracticeId, person.Id, person.Role, person.Name);
        return await ChooseAsync(actor, choice, cancellation) is { } problem ? problem : actor;
    }

    private static async Task<Checks> LookedAsync(
        RecordsContext all,
        PersonRecord? person,
        FirstPractice first,
        AccountChoice choice,
        CancellationToken cancellation
    )
    {
        Checks checks = person is null ? Looked(first) : new Checks();
        checks.Take(await AccountWriting.NameProblemAsync(all, person?.Id, choice, cancellation));
        return checks;
    }

    private static Checks Looked(FirstPractice first)
    {
        Checks checks = new();
        checks.Name("practiceName", first.PracticeName);
        checks.Phone("phone", first.Phone);
        checks.Name("personName", first.PersonName);
        if (RightsTable.ReachOf(first.Role, Right.ChangeStaff) != Reach.Practice)
        {
            checks.Add(new("role", "field-empty"));
        }

        checks.AddRange(PracticeRules.Check(first.TimeZone, first.RecheckIntervalDays));
        return checks;
    }

    private async Task<Actor> FoundAsync(FirstPractice first, CancellationToken cancellation) =>
        await FoundPractice.RunAsync(
            access,
            new FoundPractice.Founding(
                Guid.CreateVersion7(),
                nameof(SetUpDoor),
                first.PracticeName.Trim(),
                string.IsNullOrWhiteSpace(first.Phone) ? null : first.Phone.Trim(),
                first.TimeZone,
                first.Language,
                first.PersonName.Trim(),
                null,
                null,
                "{}"
            )
            {
                Role = first.Role,
                RecheckIntervalDays = first.RecheckIntervalDays,
            },
            cancellation
        );

    private async Task<Problem?> ChooseAsync(Actor actor, AccountChoice choice, CancellationToken cancellation)
    {
        DateTime now = access.Now;
        Writer writer = new(actor.PersonId, now, Guid.Empty, nameof(SetUpDoor));
        await using RecordsContext records = await access.OpenAsync(actor.PracticeId, writer, cancellation);
        await using IDbContextTransaction transaction = await records.Database.BeginTransactionAsync(cancellation);
        PersonRecord person = await records.People.SingleAsync(record => record.Id == actor.PersonId, cancellation);
        if (await AccountWriting.ChooseAsync(records, person, choice, takesSecondStep: false, now, cancellation) is { } problem)
        {
            return problem;
        }

        records.Changes.Add(AccessLine.Of(records, AccessEvent.PasswordChanged, person.Id, null));
        await records.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return null;
    }

    // A password of somebody who may sign in: one that went with its person lets nobody in.
    private static Task<bool> IsDoneAsync(RecordsContext all, CancellationToken cancellation) =>
        all
            .Accounts.IgnoreQueryFilters()
            .AnyAsync(
                account =>
                    account.PasswordHash != null
                    && all.People.IgnoreQueryFilters()
                        .Any(person => person.Id == account.PersonId && person.CanSignIn && person.ArchivedAt == null),
                cancellation
            );

    // The first who looks after people: in a practice that was begun before there were passwords, its one local vet.
    private static async Task<PersonRecord?> FirstPersonAsync(RecordsContext all, CancellationToken cancellation) =>
        await all
            .People.IgnoreQueryFilters()
            .AsNoTracking()
            .Where(person =>
                person.CanSignIn && person.ArchivedAt == null && (person.Role == Role.Vet || person.Role == Role.Administrator)
            )
            .OrderBy(person => person.Id)
            .FirstOrDefaultAsync(cancellation);
}
