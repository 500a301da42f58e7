using System.Text;

namespace RehabTrack.Exchange.Batch;

/// <summary>Pieces of output on disk with the key they are ordered by, written in order within one file and merged over several.</summary>
internal static class FragmentFile
{
    public static BinaryWriter Create(string path) =>
        new(new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None, 64 * 1024), Encoding.UTF8);

    public static void Write(BinaryWriter writer, string key, ReadOnlySpan<byte> bytes)
    {
        writer.Write(key);
        writer.Write(bytes.Length);
        writer.Write(bytes);
    }

    /// <summary>The pieces of all files in the order of their keys.</summary>
    public static IEnumerable<byte[]> Merge(IReadOnlyList<string> paths, IComparer<string> order)
    {
        List<Source> open = [];
        try
        {
            PriorityQueue<Source, (string Key, int File)> queue = new(
                Comparer<(string Key, int File)>.Create(
                    (left, right) => order.Compare(left.Key, right.Key) is var byKey && byKey != 0 ? byKey : left.File.CompareTo(right.File)
                )
            );
            foreach ((int file, string path) in paths.Index())
            {
                Source source = new(path, file);
                open.Add(source);
                if (source.Advance())
                {
                    queue.Enqueue(source, (source.Key, source.File));
                }
            }

            while (queue.TryDequeue(out Source? source, out _))
            {
                yield return source.Bytes;
                if (source.Advance())
                {
                    queue.Enqueue(source, (source.Key, source.File));
                }
            }
        }
        finally
        {
            open.ForEach(source => source.Dispose());
        }
    }

    private sealed class Source(string path, int file) : IDisposable
    {
        private readonly BinaryReader _reader = new(
            new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 16 * 1024),
            Encoding.UTF8
        );

        public int File { get; } = file;

        public string Key { get; private set; } = "";

        public byte[] Bytes { get; private set; } = [];

        public bool Advance()
        {
            if (_reader.BaseStream.Position >= _reader.BaseStream.Length)
            {
                return false;
            }

            Key = _reader.ReadString();
            Bytes = _reader.ReadBytes(_reader.ReadInt32());
            return true;
        }

        public void Dispose() => _reader.Dispose();
    }
}
