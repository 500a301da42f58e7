using Microsoft.EntityFrameworkCore;

namespace RehabTrack.Records.Keeping;

/// <summary>What every provider's registration must add, so that no write goes unstamped or untold.</summary>
internal static class RecordsOptions
{
    private static readonly StampInterceptor Stamp = new();
    private static readonly HistoryInterceptor History = new();

    public static void AddTo(DbContextOptionsBuilder options) => options.AddInterceptors(History, Stamp);
}
