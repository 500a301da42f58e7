using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Links;

/// <summary>Says a word on a link, after making sure that the linker can follow it.</summary>
internal static class LinkWords
{
    public static async Task<Outcome<Saved>> SayAsync(
        RecordsSession session,
        LinkConstraintKind kind,
        LinkWordInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        CaseRecord? injury = await records
            .Cases.AsNoTracking()
            .FirstOrDefaultAsync(record => record.Id == input.CaseId && record.ArchivedAt == null, cancellation);
        if (injury is null)
        {
            return RecordProblems.NotFound("caseId");
        }

        List<ExaminationRecord> examinations = await CaseRows.ExaminationsAsync(records, input.CaseId, cancellation);
        ILookup<Guid, ReadingRecord> readings = await CaseRows.ReadingsAsync(records, input.CaseId, cancellation);
        Checks checks = new();
        string? reason = checks.Text("reason", input.Reason);
        if (reason is null)
        {
            checks.Add(new Problem("reason", "reason-missing"));
        }

        Examination[] read =
        [
            .. examinations
                .Where(examination => examination.State != ExaminationState.Draft)
                .Select(examination => CaseRows.ToExamination(examination, readings[examination.Id])),
        ];
        HashSet<PlaceKey> places =
        [
            .. read.SelectMany(examination =>
                examination.Readings.Select(reading => new PlaceKey(examination.Id, AnatomyRules.PathOf(reading.Part), reading.Level))
            ),
        ];
        if (!places.Contains(input.First))
        {
            checks.Add(RecordProblems.NotFound("first"));
        }

        if (!places.Contains(input.Second))
        {
            checks.Add(RecordProblems.NotFound("second"));
        }

        if (input.First.ExaminationId == input.Second.ExaminationId)
        {
            checks.Add(new Problem("second", "link-within-examination"));
        }

        if (input.First.Path != input.Second.Path)
        {
            checks.Add(new Problem("second", "link-across-paths"));
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        LinkConstraint word = new(kind, input.First, input.Second);
        List<LinkWordRecord> said = await CaseRows.WordsAsync(records, input.CaseId, cancellation);
        LinkConstraint[] standing = [.. said.Where(record => record.WithdrawnAt is null).Select(CaseRows.ToConstraint)];
        if (standing.Any(other => SamePair(other, word)))
        {
            return new Problem("second", "link-word-stands");
        }

        if (kind == LinkConstraintKind.Pin && standing.FirstOrDefault(other => Contradicts(other, word)) is { } against)
        {
            return new Problem(
                "second",
                against.First.Level.Scheme is null ? "pin-contradicts-pin" : "pin-contradicts-pin-of-zones",
                TextOf(against.First.Level),
                TextOf(against.Second.Level)
            );
        }

        // What follows from several words together, only the linker knows.
        LinkedCourse linked = LevelLinker.Link(
            CaseRows.ToCourse(injury, read),
            [.. standing, word],
            SettingsStore.Of(session.Practice).Linking
        );
        if (linked.LeftOut.FirstOrDefault(left => left.Constraint == word) is { } left)
        {
            return new Problem("second", CodeOf(left.Reason));
        }

        LinkWordRecord record = new()
        {
            Id = session.NewId(),
            CaseId = input.CaseId,
            Kind = kind,
            FirstExaminationId = Guid.Parse(input.First.ExaminationId),
            FirstPath = input.First.Path,
            FirstLevelCm = input.First.Level.OnTape?.Value,
            FirstZone = LevelMap.ZoneOf(input.First.Level),
            SecondExaminationId = Guid.Parse(input.Second.ExaminationId),
            SecondPath = input.Second.Path,
            SecondLevelCm = input.Second.Level.OnTape?.Value,
            SecondZone = LevelMap.ZoneOf(input.Second.Level),
            Reason = reason!,
            SaidById = session.Person.Id,
            SaidAt = session.Now,
        };
        records.LinkWords.Add(record);
        session.Touch(input.CaseId);
        await records.SaveChangesAsync(cancellation);
        return new Saved(record.Id, record.Version);
    }

    /// <summary>Takes a word back, with a reason; it stays readable.</summary>
    public static async Task<Outcome<Saved>> WithdrawAsync(
        RecordsSession session,
        WithdrawLinkWordInput input,
        CancellationToken cancellation
    )
    {
        LinkWordRecord? word = await session.Records.LinkWords.FirstOrDefaultAsync(record => record.Id == input.Id, cancellation);
        if (word is null)
        {
            return RecordProblems.NotFound("linkWord");
        }

        Checks checks = new();
        string? reason = checks.Text("reason", input.Reason);
        if (reason is null)
        {
            checks.Add(new Problem("reason", "reason-missing"));
        }

        if (word.WithdrawnAt is not null)
        {
            checks.Add(new Problem("linkWord", "already-withdrawn"));
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        if (word.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        word.WithdrawnAt = session.Now;
        word.WithdrawnById = session.Person.Id;
        word.WithdrawnReason = reason;
        session.Touch(word.CaseId);
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(word.Id, word.Version);
    }

    private static string TextOf(Level level) => level.Zone is { } zone ? zone.Name : RecordText.Of(level.Position.Value);

    private static bool SamePair(LinkConstraint one, LinkConstraint other) =>
        (one.First == other.First && one.Second == other.Second) || (one.First == other.Second && one.Second == other.First);

    private static string CodeOf(LeftOutReason reason) =>
        reason switch
        {
            LeftOutReason.Contradicted => "link-word-contradicted",
            LeftOutReason.Crossing => "link-word-crosses",
            LeftOutReason.SameExamination => "link-word-joins-one-examination",
            LeftOutReason.PlaceNotFound => "not-found",
            LeftOutReason.DifferentPaths => "link-across-paths",
        };

    /// <summary>Two pins between the same two examinations cannot share one place, nor cross.</summary>
    private static bool Contradicts(LinkConstraint standing, LinkConstraint word)
    {
        if (standing.Kind != LinkConstraintKind.Pin || standing.First.Path != word.First.Path)
        {
            return false;
        }

        (PlaceKey first, PlaceKey second) =
            standing.First.ExaminationId == word.First.ExaminationId
                ? (standing.First, standing.Second)
                : (standing.Second, standing.First);
        return first.ExaminationId == word.First.ExaminationId
            && second.ExaminationId == word.Second.ExaminationId
            && first.Level.CompareTo(word.First.Level) != second.Level.CompareTo(word.Second.Level);
    }
}
