using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Reminders;

namespace RehabTrack.Web.Features.Concerns;

/// <summary>Tells vets of concerns by mail, where a mail server is set up. The start page tells of them in any case.</summary>
public sealed class ConcernMail(MailSender sender, GetConcernLetter getLetter)
{
    /// <summary>What kept the last concern from reaching somebody by mail; empty when nothing did.</summary>
    public IReadOnlyList<Problem> LastTrouble { get; private set; } = [];

    /// <summary>Writes to every vet whom a concern reaches.</summary>
    /// <param name="actor">Who reported it.</param>
    /// <param name="lineId">The line that opened it.</param>
    /// <param name="count">How many concerns of the horse the letter stands for, the line being the latest.</param>
    /// <param name="cancellation">Gives up before a letter goes.</param>
    /// <returns>What went wrong, letter by letter; empty when all went, or when no server is set up.</returns>
    public async Task<IReadOnlyList<Problem>> SendAsync(Actor actor, Guid lineId, int count, CancellationToken cancellation)
    {
        if (sender.IsSetUp)
        {
            LastTrouble = sender.Obstacle is { } obstacle ? [obstacle] : await WriteAsync(actor, lineId, count, cancellation);
        }

        return LastTrouble;
    }

    private async Task<IReadOnlyList<Problem>> WriteAsync(Actor actor, Guid lineId, int count, CancellationToken cancellation)
    {
        Outcome<ConcernLetter> letter = await getLetter.ExecuteAsync(actor, lineId, cancellation);
        if (!letter.Succeeded)
        {
            return letter.Problems;
        }

        MailText text = ConcernText.Of(letter.Value, count);
        List<Problem> troubles = [];
        foreach ((int index, ConcernReader reader) in letter.Value.Readers.Index())
        {
            cancellation.ThrowIfCancellationRequested();
            if (await sender.TroubleAsync($"{lineId:D}.{index}", reader.Name, reader.Mail, text) is { } trouble)
            {
                troubles.Add(sender.Problem(trouble, reader.Mail));
            }
        }

        return troubles;
    }
}
