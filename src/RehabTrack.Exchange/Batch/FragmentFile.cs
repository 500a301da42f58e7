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

    /// <summary>The pieces of all files in the order of their keys; each is good until the next one is asked for.</summary>
    public static IEnumerable<ReadOnlyMemory<byte>> Merge(IReadOnlyList<string> paths, IComparer<string> order)
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

        private readonly long _length = new FileInfo(path).Length;
        private byte[] _bytes = [];
        private int _count;

        public int File { get; } = file;

        public string Key { get; private set; } = "";

        public ReadOnlyMemory<byte> Bytes => _bytes.AsMemory(0, _count);

        public bool Advance()
        {
            if (_reader.BaseStream.Position >= _length)
            {
                return false;
            }

            Key = _reader.ReadString();
            _count = _reader.ReadInt32();
            if (_bytes.Length < _count)
            {
                _bytes = new byte[_count + (_count / 2)];
            }

            _reader.BaseStream.ReadExactly(_bytes, 0, _count);
            return true;
        }

        public void Dispose() => _reader.Dispose();
    }
}
