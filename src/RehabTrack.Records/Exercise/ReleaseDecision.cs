using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>
/// Releases what owner and trainer read of a decision, while it is the last signature under the horse's exercise. Releasing again replaces
/// the sentences; what was said before stays in the history.
/// </summary>
public sealed class ReleaseDecision(RecordsAccess access) : Command<ReleaseDecisionInput, Saved>(access)
{
    private const int MostSentences = 20;

    private protected override Right Right => Right.DecideExercise;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        ReleaseDecisionInput input,
        CancellationToken cancellation
    )
    {
        DecisionRecord? decision = await session.Records.Decisions.FirstOrDefaultAsync(record => record.Id == input.Id, cancellation);
        if (decision is null)
        {
            return RecordProblems.NotFound("decision");
        }

        if (decision.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        if (await HorseVets.RefusalAsync(session, decision.HorseId, cancellation) is { } refusal)
        {
            return refusal;
        }

        ExerciseEntryRecord last = await ExerciseRows
            .Signatures(session.Records)
            .Where(line => line.HorseId == decision.HorseId)
            .OrderByDescending(line => line.Number)
            .FirstAsync(cancellation);
        if (last.Id != decision.EntryId)
        {
            return new Problem("", "release-of-earlier-signature", RecordText.Of(last.RecordedOn));
        }

        Checks checks = new();
        Release release = new(Sentences(checks, "owner", input.Owner), Sentences(checks, "trainer", input.Trainer));
        if (checks.Any)
        {
            return checks.Problems;
        }

        if (input.WithPicture)
        {
            release = release with { Pictures = await GroundReader.PicturesAsync(session, decision.HorseId, cancellation) };
        }

        decision.ReleaseJson = JsonSerializer.Serialize(release, RecordJson.Options);
        decision.ReleasedAt = session.Now;
        decision.ReleasedById = session.Person.Id;
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(decision.Id, decision.Version);
    }

    private static string[] Sentences(Checks checks, string field, IReadOnlyList<string> sentences)
    {
        string[] told = [.. sentences.Select(sentence => checks.Text(field, sentence)).OfType<string>()];
        if (told.Length == 0)
        {
            checks.Add(new Problem(field, "field-empty"));
        }

        if (told.Length > MostSentences)
        {
            checks.Add(new Problem(field, "release-too-long", RecordText.Of(told.Length), RecordText.Of(MostSentences)));
        }

        return told;
    }
}
