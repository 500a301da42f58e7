using System.Security.Cryptography;
using System.Text;

namespace RehabTrack.Web.Account;

/// <summary>The code that the console prints while nobody can sign in: whoever reads it runs the server. One a start, used once.</summary>
public sealed class SetUpCode
{
    // 80 random bits.
    private const int Groups = 4;

    private readonly Lock _once = new();
    private bool _used;

    /// <summary>As it is printed, in groups.</summary>
    public string Text { get; } = PaperCode.Make(Groups);

    /// <summary>Whether it is this code, and was not used; case, spaces and dashes do not count.</summary>
    public bool Fits(string? typed)
    {
        bool same = CryptographicOperations.FixedTimeEquals(
            Encoding.UTF8.GetBytes(PaperCode.Bare(typed)),
            Encoding.UTF8.GetBytes(PaperCode.Bare(Text))
        );
        lock (_once)
        {
            return same && !_used;
        }
    }

    /// <summary>Uses it; false when somebody else just did.</summary>
    public bool Use()
    {
        lock (_once)
        {
            bool first = !_used;
            _used = true;
            return first;
        }
    }

    /// <summary>Gives it back: what it was used for did not come about.</summary>
    public void GiveBack()
    {
        lock (_once)
        {
            _used = false;
        }
    }
}
