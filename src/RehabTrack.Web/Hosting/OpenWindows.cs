using System.Net;

namespace RehabTrack.Web.Hosting;

/// <summary>The live pages that are open now, counted by person and by network address.</summary>
public sealed class OpenWindows(ServingLimits limits)
{
    private readonly Lock _lock = new();
    private readonly Dictionary<string, int> _open = new(StringComparer.Ordinal);

    /// <summary>Whether the person, or the address, has as many open as allowed.</summary>
    public bool IsFull(Guid person, IPAddress? address)
    {
        lock (_lock)
        {
            return Count(Key(person)) >= limits.WindowsPerPerson || Count(Key(address)) >= limits.WindowsPerAddress;
        }
    }

    /// <summary>Counts one more until what it returns is disposed; null when there are enough.</summary>
    public IDisposable? TryOpen(Guid person, IPAddress? address)
    {
        lock (_lock)
        {
            if (IsFull(person, address))
            {
                return null;
            }

            string[] keys = [Key(person), Key(address)];
            Add(keys, 1);
            return new Open(this, keys);
        }
    }

    private static string Key(Guid person) => $"person {person:N}";

    private static string Key(IPAddress? address) => $"address {Askers.NetworkOf(address)}";

    private int Count(string key) => _open.GetValueOrDefault(key);

    private void Add(string[] keys, int more)
    {
        foreach (string key in keys)
        {
            int count = Count(key) + more;
            if (count > 0)
            {
                _open[key] = count;
            }
            else
            {
                _open.Remove(key);
            }
        }
    }

    private sealed class Open(OpenWindows windows, string[] keys) : IDisposable
    {
        private bool _isClosed;

        public void Dispose()
        {
            lock (windows._lock)
            {
                if (!_isClosed)
                {
                    _isClosed = true;
                    windows.Add(keys, -1);
                }
            }
        }
    }
}
