using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Sqlite.Trails;

/// <summary>
/// Chains the lines that were there before lines were chained: once, in one transaction, so that a start that is killed meanwhile leaves
/// nothing. After that a line without a number is not of this program's making; it is left for whoever verifies the trail.
/// </summary>
internal static class OldLines
{
    private const int AtOnce = 1000;

    public static async Task ChainAsync(RecordsContext records, CancellationToken cancellation)
    {
        IQueryable<ChangeRecord> all = records.Changes.IgnoreQueryFilters().AsNoTracking();
        if (await all.AnyAsync(line => line.Number >= 1, cancellation) || !await all.AnyAsync(cancellation))
        {
            return;
        }

        await using IDbContextTransaction transaction = await records.Database.BeginTransactionAsync(cancellation);
        foreach (string statement in AppendOnly.Without("Change"))
        {
            await records.Database.ExecuteSqlRawAsync(statement, cancellation);
        }

        await using DbCommand update = Update(records, transaction);
        foreach (Guid practiceId in await all.Select(line => line.PracticeId).Distinct().ToArrayAsync(cancellation))
        {
            TrailChain chain = TrailChain.AtBeginning();
            Guid[] ids = await all.Where(line => line.PracticeId == practiceId)
                .OrderBy(line => line.Id)
                .Select(line => line.Id)
                .ToArrayAsync(cancellation);
            foreach (Guid[] some in ids.Chunk(AtOnce))
            {
                ChangeRecord[] lines = await all.Where(line => some.Contains(line.Id)).OrderBy(line => line.Id).ToArrayAsync(cancellation);
                foreach (ChangeRecord line in lines)
                {
                    chain.Append(line);
                    await WriteAsync(update, line, cancellation);
                }
            }
        }

        await transaction.CommitAsync(cancellation);
    }

    private static DbCommand Update(RecordsContext records, IDbContextTransaction transaction)
    {
        DbCommand command = records.Database.GetDbConnection().CreateCommand();
        command.Transaction = transaction.GetDbTransaction();
        command.CommandText = """
            UPDATE "Change" SET "Number" = @number, "Salt" = @salt, "BodyHash" = @body, "PreviousHash" = @previous, "Hash" = @hash
            WHERE "Id" = @id
            """;
        foreach (string name in (string[])["@number", "@salt", "@body", "@previous", "@hash", "@id"])
        {
            DbParameter parameter = command.CreateParameter();
            parameter.ParameterName = name;
            command.Parameters.Add(parameter);
        }

        return command;
    }

    private static async Task WriteAsync(DbCommand update, ChangeRecord line, CancellationToken cancellation)
    {
        object?[] values = [line.Number, line.Salt, line.BodyHash, line.PreviousHash, line.Hash, line.Id];
        for (int i = 0; i < values.Length; i++)
        {
            update.Parameters[i].Value = values[i];
        }

        await update.ExecuteNonQueryAsync(cancellation);
    }
}
