using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>Keeps what a person saw when signing.</summary>
internal static class SignedFigures
{
    /// <summary>
    /// Analyses the case as it stands now, the signed examination saved, and keeps the figures with the signature; saving is the caller's.
    /// </summary>
    /// <param name="session">The command at work, in its transaction.</param>
    /// <param name="examination">What is signed.</param>
    /// <param name="number">The version of the examination.</param>
    /// <param name="seenHash">The input hash of what the person was shown; null when nothing was.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>A problem when that is not what the records say; null when the figures are kept.</returns>
    public static async Task<Problem?> KeepAsync(
        RecordsSession session,
        ExaminationRecord examination,
        int number,
        string? seenHash,
        CancellationToken cancellation
    )
    {
        AnalysisSettings settings = SettingsStore.Of(session.Practice);
        CaseRecord injury = await session.Records.Cases.AsNoTracking().FirstAsync(record => record.Id == examination.CaseId, cancellation);
        (CaseCourse course, IReadOnlyList<LinkConstraint> words) = await CaseRows.StandingAsync(
            session.Records,
            injury,
            session.Today,
            cancellation
        );
        SeenFigures figures = SeenFigures.Of(course, words, CaseAnalyser.Analyse(course, words, settings, session.Today));
        if (seenHash is not null && seenHash != figures.InputHash)
        {
            return new Problem("examination", "case-changed-since-seen");
        }

        session.Records.SignedFigures.Add(
            new SignedFiguresRecord
            {
                Id = session.NewId(),
                PracticeId = session.Practice.Id,
                CaseId = examination.CaseId,
                ExaminationId = examination.Id,
                Number = number,
                At = session.Now,
                PersonId = session.Person.Id,
                EngineVersion = figures.EngineVersion,
                SettingsHash = SettingsStore.Hash(SettingsStore.Write(settings)),
                InputHash = figures.InputHash,
                AsOf = figures.AsOf,
                Verdict = figures.Verdict,
                FiguresJson = JsonSerializer.Serialize(figures, RecordJson.Options),
            }
        );
        return null;
    }

    public static SeenFigures Read(string json) => JsonSerializer.Deserialize<SeenFigures>(json, RecordJson.Options)!;
}
