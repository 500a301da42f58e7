using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace RehabTrack.Records.Keeping;

/// <summary>Instants are UTC: what is read back says so, and nothing else is written.</summary>
internal sealed class UtcInstantConverter()
    : ValueConverter<DateTime, DateTime>(instant => Utc(instant), stored => DateTime.SpecifyKind(stored, DateTimeKind.Utc))
{
    private static DateTime Utc(DateTime instant) =>
        instant.Kind == DateTimeKind.Utc ? instant : throw new InvalidOperationException("An instant must be UTC before it is written.");
}
