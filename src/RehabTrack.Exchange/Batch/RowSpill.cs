using System.Text;
using RehabTrack.Exchange.Rows;

namespace RehabTrack.Exchange.Batch;

/// <summary>
/// Read rows on disk, divided by a hash of the case's label, so that all rows of a case lie in one part and several parts at a time fit in
/// memory.
/// </summary>
internal sealed class RowSpill : IDisposable
{
    private const long BytesOfAPart = 1_000_000;
    private const int MostParts = 192;
    private readonly BinaryWriter?[] _writers;
    private readonly SheetRow?[] _last;
    private readonly string _folder;

    public RowSpill(string folder, long fileBytes)
    {
        _folder = folder;
        _writers = new BinaryWriter?[(int)Math.Clamp(fileBytes / BytesOfAPart, 1, MostParts)];
        _last = new SheetRow?[_writers.Length];
    }

    public int Parts => _writers.Length;

    /// <summary>Keeps a row.</summary>
    public void Add(SheetRow row)
    {
        int part = (int)(Hash(row.Case) % (uint)Parts);
        BinaryWriter writer = _writers[part] ??= new BinaryWriter(
            new FileStream(PathOf(part), FileMode.CreateNew, FileAccess.Write, FileShare.None, 16 * 1024),
            Encoding.UTF8
        );
        RowFile.Write(writer, row, _last[part]);
        _last[part] = row;
    }

    /// <summary>Ends writing, so that the parts can be read.</summary>
    public void Close()
    {
        foreach (BinaryWriter? writer in _writers)
        {
            writer?.Dispose();
        }

        Array.Clear(_last);
    }

    /// <summary>The rows of a part, in the order they were added.</summary>
    /// <param name="part">The part.</param>
    /// <param name="plan">The plan that they are said to come from.</param>
    public IEnumerable<SheetRow> Read(int part, RowPlan plan)
    {
        if (_writers[part] is null)
        {
            yield break;
        }

        using FileStream stream = new(PathOf(part), FileMode.Open, FileAccess.Read, FileShare.Read, 64 * 1024);
        using BinaryReader reader = new(stream, Encoding.UTF8);
        long length = stream.Length;
        SheetRow? last = null;
        while (stream.Position < length)
        {
            last = RowFile.Read(reader, last, plan);
            yield return last;
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
