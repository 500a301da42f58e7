using System.Collections.Concurrent;
using System.Threading.Channels;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Web.Features.Concerns;

/// <summary>Rings for a concern that was just opened, so that nobody at the stable waits for a mail server.</summary>
public sealed class ConcernBell
{
    private readonly Channel<(Actor Actor, Guid LineId)> _rung = Channel.CreateUnbounded<(Actor Actor, Guid LineId)>();
    private readonly ConcurrentDictionary<Guid, bool> _heard = new();

    /// <summary>The concerns that were rung for, as they come.</summary>
    public ChannelReader<(Actor Actor, Guid LineId)> Rung => _rung.Reader;

    /// <summary>Rings when what was entered opened a concern; a second tap of the same form rings no second time.</summary>
    /// <param name="actor">Who entered it.</param>
    /// <param name="answer">What the records answered.</param>
    public void Ring(Actor actor, Outcome<LogAnswer> answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        if (answer.ValueOrDefault is { IsConcern: true } concern && _heard.TryAdd(concern.Id, true))
        {
            _rung.Writer.TryWrite((actor, concern.Id));
        }
    }
}
