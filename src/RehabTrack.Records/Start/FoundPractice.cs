using Microsoft.EntityFrameworkCore.Storage;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Start;

/// <summary>Founds a practice with its first person: the one write that no actor can ask for, since there is none yet.</summary>
internal static class FoundPractice
{
    public static async Task<Actor> RunAsync(RecordsAccess access, Founding founding, CancellationToken cancellation)
    {
        DateTime now = access.Now;
        Guid practiceId = NewId.At(now);
        Guid personId = NewId.At(now);
        await using RecordsContext records = await access.OpenAsync(
            practiceId,
            new Writer(personId, now, founding.CommandId, founding.Step),
            cancellation
        );
        await using IDbContextTransaction transaction = await records.Database.BeginTransactionAsync(cancellation);
        records.Practices.Add(
            new PracticeRecord
            {
                Id = practiceId,
                Name = founding.PracticeName,
                Phone = founding.PracticePhone,
                TimeZone = founding.TimeZone,
                Language = founding.Language,
                RecheckIntervalDays = founding.RecheckIntervalDays,
            }
        );
        records.People.Add(
            new PersonRecord
            {
                Id = personId,
                Name = founding.PersonName,
                FoldedName = Folded.Of(founding.PersonName),
                Role = founding.Role,
                Phone = founding.PersonPhone,
                Mail = founding.PersonMail,
                Language = founding.Language,
                CanSignIn = true,
            }
        );
        records.AppliedCommands.Add(
            new AppliedCommandRecord
            {
                PracticeId = practiceId,
                CommandId = founding.CommandId,
                UseCase = founding.Step,
                PersonId = personId,
                At = now,
                ResultJson = founding.ResultJson,
            }
        );
        await records.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return new Actor(practiceId, personId, founding.Role, founding.PersonName);
    }

    /// <summary>What it is founded with.</summary>
    public sealed record Founding(
        Guid CommandId,
        string Step,
        string PracticeName,
        string? PracticePhone,
        string TimeZone,
        string Language,
        string PersonName,
        string? PersonPhone,
        string? PersonMail,
        string ResultJson
    )
    {
        public Role Role { get; init; } = Role.Vet;

        public int? RecheckIntervalDays { get; init; }
    }
}
