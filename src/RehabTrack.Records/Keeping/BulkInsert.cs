using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Storage;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace RehabTrack.Records.Keeping;

/// <summary>
/// Writes many new records of one kind through one prepared statement, many times faster than through the context. It stamps practice
/// and version as the context does; the history is the caller's.
/// </summary>
/// <typeparam name="T">The kind of record.</typeparam>
internal sealed class BulkInsert<T> : IDisposable
    where T : class
{
    private readonly RecordsContext records;
    private readonly DbCommand command;
    private readonly (IClrPropertyGetter Getter, ValueConverter? Converter, DbParameter Parameter)[] columns;
    private readonly Func<object, object?> practiceOf;

    /// <summary>Prepares the statement in the transaction that runs.</summary>
    public BulkInsert(RecordsContext records)
    {
        this.records = records;
        IEntityType entity = records.Model.FindEntityType(typeof(T))!;
        StoreObjectIdentifier table = StoreObjectIdentifier.Table(entity.GetTableName()!, entity.GetSchema());
        IProperty[] properties = [.. entity.GetProperties()];
        ISqlGenerationHelper sql = records.GetService<ISqlGenerationHelper>();
        command = records.Database.GetDbConnection().CreateCommand();
        command.Transaction = records.Database.CurrentTransaction!.GetDbTransaction();
        string names = string.Join(", ", properties.Select(property => sql.DelimitIdentifier(property.GetColumnName(table)!)));
        string marks = string.Join(", ", properties.Select((_, at) => $"@p{at}"));
        command.CommandText = $"INSERT INTO {sql.DelimitIdentifier(table.Name, table.Schema)} ({names}) VALUES ({marks})";
        columns =
        [
            .. properties.Select(
                (property, at) =>
                {
                    DbParameter parameter = command.CreateParameter();
                    parameter.ParameterName = $"@p{at}";
                    command.Parameters.Add(parameter);
                    return (property.GetGetter(), property.GetTypeMapping().Converter, parameter);
                }
            ),
        ];
        practiceOf = entity.FindProperty(nameof(KeptRecord.PracticeId))!.GetGetter().GetClrValue;
        command.Prepare();
    }

    /// <summary>Writes one record.</summary>
    public void Write(T record)
    {
        if (record is KeptRecord kept)
        {
            kept.PracticeId = records.PracticeId;
            kept.Version = Guid.CreateVersion7();
        }

        if (!Equals(practiceOf(record), records.PracticeId))
        {
            throw new InvalidOperationException("A record of another practice cannot be written.");
        }

        foreach ((IClrPropertyGetter getter, ValueConverter? converter, DbParameter parameter) in columns)
        {
            object? value = getter.GetClrValue(record);
            parameter.Value = (converter is null || value is null ? value : converter.ConvertToProvider(value)) ?? DBNull.Value;
        }

        command.ExecuteNonQuery();
    }

    public void Dispose() => command.Dispose();
}
