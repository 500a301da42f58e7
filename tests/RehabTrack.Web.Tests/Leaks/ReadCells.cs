using System.Collections.Concurrent;
using System.Data.Common;
using System.Diagnostics;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace RehabTrack.Web.Tests.Leaks;

/// <summary>
/// What a request reads from the database, whatever it then shows of it: every question that is asked while the server answers is put again
/// to the file, and all its cells are kept.
/// </summary>
internal sealed class ReadCells : IObserver<DiagnosticListener>, IObserver<KeyValuePair<string, object?>>, IDisposable
{
    private readonly ConcurrentQueue<(string? RowId, string Column, string Text)> _cells = new();
    private readonly ConcurrentBag<IDisposable> _listening = [];
    private volatile string _database = "";

    public ReadCells()
    {
        _listening.Add(DiagnosticListener.AllListeners.Subscribe(this));
    }

    /// <summary>Every text that was read, with its column and, where the row has one, its id.</summary>
    public IReadOnlyCollection<(string? RowId, string Column, string Text)> Cells => _cells;

    /// <summary>From now on it is this database; other servers of this process ask others.</summary>
    public void Watch(string connectionString) => _database = new SqliteConnectionStringBuilder(connectionString).DataSource;

    /// <summary>Begins anew.</summary>
    public void Clear() => _cells.Clear();

    public void OnNext(DiagnosticListener value)
    {
        if (value.Name == "Microsoft.EntityFrameworkCore")
        {
            _listening.Add(value.Subscribe(this));
        }
    }

    public void OnNext(KeyValuePair<string, object?> value)
    {
        // What the program does by itself meanwhile is asked for nobody.
        if (
            value.Key == RelationalEventId.CommandExecuting.Name
            && value.Value is CommandEventData { Command: var command }
            && Activity.Current is not null
            && command.Connection is SqliteConnection { DataSource: var source }
            && source == _database
            && command.CommandText.TrimStart().StartsWith("SELECT", StringComparison.OrdinalIgnoreCase)
        )
        {
            Ask(command);
        }
    }

    public void OnCompleted() { }

    public void OnError(Exception error) { }

    public void Dispose()
    {
        foreach (IDisposable one in _listening)
        {
            one.Dispose();
        }
    }

    private void Ask(DbCommand asked)
    {
        using SqliteConnection connection = new($"Data Source={_database};Mode=ReadOnly;Pooling=False");
        connection.Open();
        using SqliteCommand again = connection.CreateCommand();
        again.CommandText = asked.CommandText;
        foreach (DbParameter parameter in asked.Parameters)
        {
            again.Parameters.AddWithValue(parameter.ParameterName, parameter.Value ?? DBNull.Value);
        }

        using SqliteDataReader rows = again.ExecuteReader();
        int id = Enumerable.Range(0, rows.FieldCount).FirstOrDefault(column => rows.GetName(column) == "Id", -1);
        while (rows.Read())
        {
            string? rowId = id < 0 ? null : rows.GetValue(id) as string;
            for (int column = 0; column < rows.FieldCount; column++)
            {
                if (rows.GetValue(column) is string text)
                {
                    _cells.Enqueue((rowId, rows.GetName(column), text));
                }
            }
        }
    }
}
