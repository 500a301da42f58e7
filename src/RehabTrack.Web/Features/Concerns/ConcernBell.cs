using System.Threading.Channels;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Web.Features.Concerns;

/// <summary>
/// Rings for a concern that was just opened, so that nobody at the stable waits for a mail server. It remembers a bounded number; what is rung
/// for beyond it gets no letter, and stands on the start page as every concern does.
/// </summary>
public sealed class ConcernBell
{
    /// <summary>How many may wait for their letter, and of how many it is known that they were heard.</summary>
    public const int Most = 1000;

    private readonly Channel<ConcernRing> _rung = Channel.CreateBounded<ConcernRing>(Most);
    private readonly Lock _guard = new();
    private readonly HashSet<Guid> _heard = [];
    private readonly Queue<Guid> _order = new();

    /// <summary>The concerns that were rung for, as they come.</summary>
    public ChannelReader<ConcernRing> Rung => _rung.Reader;

    /// <summary>Rings when what was entered opened a concern; a second tap of the same form rings no second time.</summary>
    /// <param name="actor">Who entered it.</param>
    /// <param name="horseId">Of which horse.</param>
    /// <param name="answer">What the records answered.</param>
    public void Ring(Actor actor, Guid horseId, Outcome<LogAnswer> answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        if (answer.ValueOrDefault is { IsConcern: true } concern && IsNew(concern.Id))
        {
            _rung.Writer.TryWrite(new ConcernRing(actor, horseId, concern.Id));
        }
    }

    private bool IsNew(Guid lineId)
    {
        lock (_guard)
        {
            if (!_heard.Add(lineId))
            {
                return false;
            }

            _order.Enqueue(lineId);
            if (_order.Count > Most)
            {
                _heard.Remove(_order.Dequeue());
            }

            return true;
        }
    }
}
