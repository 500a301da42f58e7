using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using RehabTrack.Rechecks.Analysis;

namespace RehabTrack.Records.Keeping;

/// <summary>Analysis settings as kept.</summary>
internal static class SettingsStore
{
    /// <summary>The practice's settings; the tables' where it has none.</summary>
    public static AnalysisSettings Of(PracticeRecord practice) =>
        practice.SettingsJson is { } json ? JsonSerializer.Deserialize<AnalysisSettings>(json, RecordJson.Options)! : new();

    /// <summary>What is kept for a practice: null for the tables' settings, so that it follows them when they change.</summary>
    public static string? OwnOf(AnalysisSettings? settings) =>
        settings is null || settings == new AnalysisSettings() ? null : Write(settings);

    public static string Write(AnalysisSettings settings) => JsonSerializer.Serialize(settings, RecordJson.Options);

    public static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
