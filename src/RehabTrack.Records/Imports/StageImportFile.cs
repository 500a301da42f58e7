using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Imports;

/// <summary>Keeps a file that was handed in until it is imported or thirty days have passed.</summary>
public sealed class StageImportFile(RecordsAccess access) : Command<StageImportFileInput, Saved>(access)
{
    private const int LargestBytes = 64 * 1024 * 1024;
    private const int KeptDays = 30;

    private protected override Right Right => Right.Import;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        StageImportFileInput input,
        CancellationToken cancellation
    )
    {
        Checks checks = new();
        string name = checks.Name("fileName", input.FileName);
        if (input.Content.Length > LargestBytes)
        {
            checks.Add(new Problem("file", "file-too-large", RecordText.Of(LargestBytes / 1024 / 1024)));
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        DateTime old = session.Now.AddDays(-KeptDays);
        await session.Records.ImportFiles.Where(file => file.HandedInAt < old).ExecuteDeleteAsync(cancellation);
        ImportFileRecord staged = new()
        {
            Id = session.NewId(),
            FileName = name,
            Content = input.Content,
            Checksum = Convert.ToHexStringLower(SHA256.HashData(input.Content)),
            PersonId = session.Person.Id,
            HandedInAt = session.Now,
        };
        session.Records.ImportFiles.Add(staged);
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(staged.Id, staged.Version);
    }
}
