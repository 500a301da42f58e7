using System.Text;
using RehabTrack.Exchange.Rows;
using RehabTrack.Exchange.Sheets;

namespace RehabTrack.Exchange.Batch;

/// <summary>
/// Rows on disk, divided by a hash of the case's label, so that all rows of a case lie in one part and each part fits in memory.
/// </summary>
internal sealed class RowSpill : IDisposable
{
    private const long BytesOfAPart = 4_000_000;
    private const int MostParts = 192;
    private readonly BinaryWriter?[] _writers;
    private readonly string _folder;

    public RowSpill(string folder, long fileBytes)
    {
        _folder = folder;
        _writers = new BinaryWriter?[(int)Math.Clamp(fileBytes / BytesOfAPart, 1, MostParts)];
    }

    public int Parts => _writers.Length;

    /// <summary>Keeps the cells of a row, in the order of the canonical columns.</summary>
    public void Add(SheetRecord record, RowPlan plan, string label)
    {
        int part = (int)(Hash(label) % (uint)Parts);
        BinaryWriter writer = _writers[part] ??= new BinaryWriter(
            new FileStream(PathOf(part), FileMode.CreateNew, FileAccess.Write, FileShare.None, 16 * 1024),
            Encoding.UTF8
        );
        writer.Write(record.Row);
        for (int column = 0; column < SheetColumns.All.Count; column++)
        {
            writer.Write(plan.SourceAt(column)?.Cell is { } cell ? record.CellAt(cell) : "");
        }
    }

    /// <summary>Ends writing, so that the parts can be read.</summary>
    public void Close()
    {
        foreach (BinaryWriter? writer in _writers)
        {
            writer?.Dispose();
        }
    }

    /// <summary>The rows of a part, in the order they were added.</summary>
    public IEnumerable<SheetRecord> Read(int part)
    {
        if (_writers[part] is null)
        {
            yield break;
        }

        using FileStream stream = new(PathOf(part), FileMode.Open, FileAccess.Read, FileShare.Read, 64 * 1024);
        using BinaryReader reader = new(stream, Encoding.UTF8);
        while (stream.Position < stream.Length)
        {
            int row = reader.ReadInt32();
            string[] cells = new string[SheetColumns.All.Count];
            for (int column = 0; column < cells.Length; column++)
            {
                cells[column] = reader.ReadString();
            }

            yield return new SheetRecord(row, cells);
        }
    }

    public void Delete(int part) => File.Delete(PathOf(part));

    public void Dispose() => Close();

    private string PathOf(int part) => Path.Combine(_folder, FormattableString.Invariant($"rows-{part}"));

    /// <summary>FNV-1a: the same on every run, unlike the hash of a string.</summary>
    private static uint Hash(string text)
    {
        uint hash = 2166136261;
        foreach (char letter in text)
        {
            hash = unchecked((hash ^ letter) * 16777619);
        }

        return hash ^ (hash >> 16);
    }
}
