using System.Security.Cryptography;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Imports;

/// <summary>Keeps a file that was handed in, until what is old is forgotten.</summary>
public sealed class StageImportFile(RecordsAccess access) : Command<StageImportFileInput, Saved>(access)
{
    private const double BytesPerMegabyte = 1_000_000;
    private static readonly double LargestMegabytes = ReferenceTable.Load("limits")["largestImportMegabytes"];

    private protected override Right Right => Right.Import;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        StageImportFileInput input,
        CancellationToken cancellation
    )
    {
        Checks checks = new();
        string name = checks.Name("fileName", input.FileName);
        double megabytes = input.Content.Length / BytesPerMegabyte;
        if (megabytes > LargestMegabytes)
        {
            checks.Add(new Problem("file", "file-too-large", RecordText.Of(Math.Ceiling(megabytes)), RecordText.Of(LargestMegabytes)));
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

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
