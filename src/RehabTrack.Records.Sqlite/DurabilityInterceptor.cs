using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace RehabTrack.Records.Sqlite;

/// <summary>
/// Opens every connection so that a commit is on the disk before it is answered: NORMAL may lose the last ones on power loss. What is
/// erased is overwritten, so that it cannot be read out of the file's free pages.
/// </summary>
internal sealed class DurabilityInterceptor : DbConnectionInterceptor
{
    private const string Full = "PRAGMA synchronous=FULL; PRAGMA secure_delete=ON";

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using DbCommand command = connection.CreateCommand();
        command.CommandText = Full;
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection,
        ConnectionEndEventData eventData,
        CancellationToken cancellationToken = default
    )
    {
        await using DbCommand command = connection.CreateCommand();
        command.CommandText = Full;
        await command.ExecuteNonQueryAsync(cancellationToken);
    }
}
