using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace RehabTrack.Records.Keeping;

/// <summary>The hashes of the trail, byte by byte as docs/audit.md states them.</summary>
internal static class TrailHash
{
    public const int SaltBytes = 16;
    private const string BodyTag = "rehabtrack-trail-body-1";
    private const string LineTag = "rehabtrack-trail-line-1";
    private const string InstantFormat = "yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'";
    private const int NoValue = -1;

    /// <summary>What stands before the first line.</summary>
    public static byte[] BeforeFirst => new byte[SHA256.HashSizeInBytes];

    /// <summary>Stands for what a line says; without the salt nobody can try out what it was.</summary>
    public static byte[] OfBody(byte[] salt, string? before, string after)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Add(hash, BodyTag);
        Add(hash, salt);
        Add(hash, before);
        Add(hash, after);
        return hash.GetHashAndReset();
    }

    /// <summary>The hash of a line that has its number, its body's hash and the hash of the line before.</summary>
    public static byte[] OfLine(ChangeRecord line)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Add(hash, LineTag);
        Add(hash, line.PreviousHash ?? []);
        Add(hash, Text(line.PracticeId));
        Add(hash, line.Number?.ToString(CultureInfo.InvariantCulture));
        Add(hash, Text(line.Id));
        Add(hash, line.At.ToString(InstantFormat, CultureInfo.InvariantCulture));
        Add(hash, Text(line.PersonId));
        Add(hash, Text(line.CommandId));
        Add(hash, line.UseCase);
        Add(hash, line.Kind);
        Add(hash, Text(line.RecordId));
        Add(hash, line.CaseId is { } caseId ? Text(caseId) : null);
        Add(hash, line.BodyHash ?? []);
        return hash.GetHashAndReset();
    }

    private static string Text(Guid id) => id.ToString("D");

    private static void Add(IncrementalHash hash, string? text)
    {
        if (text is null)
        {
            AddLength(hash, NoValue);
        }
        else
        {
            Add(hash, Encoding.UTF8.GetBytes(text));
        }
    }

    private static void Add(IncrementalHash hash, byte[] bytes)
    {
        AddLength(hash, bytes.Length);
        hash.AppendData(bytes);
    }

    private static void AddLength(IncrementalHash hash, int length)
    {
        Span<byte> bytes = stackalloc byte[sizeof(int)];
        BinaryPrimitives.WriteInt32BigEndian(bytes, length);
        hash.AppendData(bytes);
    }
}
