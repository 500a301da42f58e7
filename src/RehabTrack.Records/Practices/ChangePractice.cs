using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Practices;

/// <summary>Changes the practice and its settings. New analysis settings renew the summaries of all its cases.</summary>
public sealed class ChangePractice(RecordsAccess access) : Command<ChangePracticeInput, Saved>(access)
{
    private protected override Right Right => Right.ChangePractice;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        ChangePracticeInput input,
        CancellationToken cancellation
    )
    {
        Checks checks = new();
        string name = checks.Name("name", input.Name);
        string? phone = checks.Phone("phone", input.Phone);
        string language = checks.Name("language", input.Language);
        checks.AddRange(PracticeRules.Check(input.TimeZone, input.RecheckIntervalDays));
        checks.AddRange(PracticeRules.CheckKept("accessKeptDays", input.AccessKeptDays));
        checks.AddRange(PracticeRules.CheckKept("contactKeptDays", input.ContactKeptDays));
        checks.AddRange(SettingsRules.Check(input.Settings ?? new AnalysisSettings()));
        if (checks.Any)
        {
            return checks.Problems;
        }

        string? settings = SettingsStore.OwnOf(input.Settings);
        PracticeRecord practice = await session.Records.Practices.SingleAsync(cancellation);
        if (practice.Version != input.Version)
        {
            Conflict conflict = new Conflict()
                .Field("name", practice.Name, name)
                .Field("phone", practice.Phone, phone)
                .Field("timeZone", practice.TimeZone, input.TimeZone)
                .Field("language", practice.Language, language)
                .Field("recheckIntervalDays", practice.RecheckIntervalDays, input.RecheckIntervalDays)
                .Field("showChangeWhileEntering", practice.ShowChangeWhileEntering, input.ShowChangeWhileEntering)
                .Field("accessKeptDays", practice.AccessKeptDays, input.AccessKeptDays)
                .Field("contactKeptDays", practice.ContactKeptDays, input.ContactKeptDays)
                .Field("settings", practice.SettingsJson, settings);
            if (conflict.Any)
            {
                return conflict.Problems;
            }
        }

        bool analysisChanges = practice.SettingsJson != settings;
        practice.Name = name;
        practice.Phone = phone;
        practice.TimeZone = input.TimeZone;
        practice.Language = language;
        practice.RecheckIntervalDays = input.RecheckIntervalDays;
        practice.ShowChangeWhileEntering = input.ShowChangeWhileEntering;
        practice.AccessKeptDays = input.AccessKeptDays;
        practice.ContactKeptDays = input.ContactKeptDays;
        practice.SettingsJson = settings;
        await session.Records.SaveChangesAsync(cancellation);
        if (analysisChanges)
        {
            await RenewAllAsync(session, input.Settings ?? new AnalysisSettings(), cancellation);
        }

        return new Saved(practice.Id, practice.Version);
    }

    internal static async Task RenewAllAsync(RecordsSession session, AnalysisSettings settings, CancellationToken cancellation)
    {
        Guid[] cases = await session
            .Records.Cases.Where(injury => injury.ArchivedAt == null)
            .Select(injury => injury.Id)
            .ToArrayAsync(cancellation);
        foreach (Guid caseId in cases)
        {
            await SummaryRenewal.RenewAsync(session, caseId, settings, cancellation);
        }
    }
}
