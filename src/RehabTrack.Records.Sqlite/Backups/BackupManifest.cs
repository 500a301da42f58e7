using System.Text.Json;
using System.Text.Json.Serialization;

namespace RehabTrack.Records.Sqlite.Backups;

/// <summary>What a backup says of itself; it lies in it as <c>manifest.json</c>.</summary>
public sealed record BackupManifest
{
    /// <summary>Its name inside the backup.</summary>
    public const string Name = "manifest.json";

    /// <summary>The format this version writes, and the newest it reads.</summary>
    public const int PresentFormat = 1;

    private const int LongestPath = 400;

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.General)
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Skip,
    };

    /// <summary>The format of the backup.</summary>
    public required int Format { get; init; }

    /// <summary>The version of the program that made it.</summary>
    public required string Program { get; init; }

    /// <summary>The last migration of the database in it.</summary>
    public required string Migration { get; init; }

    /// <summary>When it was made (UTC).</summary>
    public required DateTime MadeAt { get; init; }

    /// <summary>Rows by table.</summary>
    public required IReadOnlyDictionary<string, long> Tables { get; init; }

    /// <summary>Every file in it but the manifest.</summary>
    public required IReadOnlyList<BackupFile> Files { get; init; }

    internal byte[] Write() => JsonSerializer.SerializeToUtf8Bytes(this, Options);

    /// <summary>Reads a manifest.</summary>
    /// <returns>The manifest; null when it is none, or names a file that could lead out of the folder.</returns>
    internal static BackupManifest? Read(byte[] json)
    {
        try
        {
            BackupManifest? manifest = JsonSerializer.Deserialize<BackupManifest>(json, Options);
            return manifest is { Tables: not null, Files: not null, Program: not null, Migration: not null } && manifest.IsWhole()
                ? manifest
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private bool IsWhole() =>
        Files.All(file => file is { Length: >= 0, Sha256.Length: 64 } && IsInside(file.Path))
        && Files.DistinctBy(file => file.Path, StringComparer.OrdinalIgnoreCase).Count() == Files.Count
        && Files.Any(file => file.Path == DataFolder.DatabaseName);

    private static bool IsInside(string? path) =>
        path is { Length: > 0 and <= LongestPath }
        && !path.Any(letter => letter is '\\' or ':' || char.IsControl(letter))
        && path.Split('/').All(part => part.Length > 0 && part.Trim('.', ' ').Length > 0 && part[^1] is not ('.' or ' '));
}
