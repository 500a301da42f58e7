using Microsoft.EntityFrameworkCore.Storage;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Start;

/// <summary>Founds a practice with its first vet: the one write that no actor can ask for, since there is none yet.</summary>
internal static class FoundPractice
{
    public static async Task<Actor> RunAsync(RecordsAccess access, Founding founding, CancellationToken cancellation)
    {
        DateTime now = access.Now;
        Guid practiceId = NewId.At(now);
        Guid vetId = NewId.At(now);
        await using RecordsContext records = await access.OpenAsync(
            practiceId,
            new Writer(vetId, now, founding.CommandId, founding.Step),
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
            }
        );
        records.People.Add(
            new PersonRecord
            {
                Id = vetId,
                Name = founding.VetName,
                FoldedName = Folded.Of(founding.VetName),
                Role = Role.Vet,
                Phone = founding.VetPhone,
                Mail = founding.VetMail,
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
                PersonId = vetId,
                At = now,
                ResultJson = founding.ResultJson,
            }
        );
        await records.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return new Actor(practiceId, vetId, Role.Vet, founding.VetName);
    }

    /// <summary>What it is founded with.</summary>
    public sealed record Founding(
        Guid CommandId,
        string Step,
        string PracticeName,
        string? PracticePhone,
        string TimeZone,
        string Language,
        string VetName,
        string? VetPhone,
        string? VetMail,
        string ResultJson
    );
}
