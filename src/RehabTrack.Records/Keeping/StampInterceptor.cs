using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace RehabTrack.Records.Keeping;

/// <summary>Renews version tokens and sees to it that nothing is written into another practice.</summary>
internal sealed class StampInterceptor : SaveChangesInterceptor
{
    public override InterceptionResult<int> SavingChanges(DbContextEventData eventData, InterceptionResult<int> result) =>
        throw new InvalidOperationException("Records are written asynchronously.");

    public override ValueTask<InterceptionResult<int>> SavingChangesAsync(
        DbContextEventData eventData,
        InterceptionResult<int> result,
        CancellationToken cancellationToken = default
    )
    {
        RecordsContext records = (RecordsContext)eventData.Context!;
        foreach (EntityEntry entry in records.ChangeTracker.Entries())
        {
            if (entry.State is not (EntityState.Added or EntityState.Modified or EntityState.Deleted))
            {
                continue;
            }

            PropertyEntry practice = entry.Property(nameof(KeptRecord.PracticeId));
            if (entry.State == EntityState.Added && practice.CurrentValue is Guid none && none == Guid.Empty)
            {
                practice.CurrentValue = records.PracticeId;
            }

            if (!Equals(practice.CurrentValue, records.PracticeId))
            {
                throw new InvalidOperationException("A record of another practice cannot be written.");
            }

            if (entry.Entity is KeptRecord kept && entry.State != EntityState.Deleted)
            {
                kept.Version = Guid.CreateVersion7();
            }
        }

        return base.SavingChangesAsync(eventData, result, cancellationToken);
    }
}
