using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Horses;

/// <summary>A chip is one horse's alone, of those that count.</summary>
internal static class HorseChips
{
    /// <summary>Whether another horse has the chip; null when none has.</summary>
    public static async Task<Problem?> TakenAsync(RecordsContext records, string chip, Guid? horseId, CancellationToken cancellation)
    {
        string? other = await records
            .Horses.Where(record => record.Microchip == chip && record.Id != horseId && record.ArchivedAt == null)
            .Select(record => record.Name)
            .FirstOrDefaultAsync(cancellation);
        return other is null ? null : new Problem("microchip", "chip-taken", chip, other);
    }
}
