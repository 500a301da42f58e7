using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Imports;

/// <summary>Reads a file that was handed in.</summary>
public sealed class GetStagedFile(RecordsAccess access) : UseCase<Guid, StagedFile>(access)
{
    private protected override Right Right => Right.Import;

    private protected override async Task<Outcome<StagedFile>> RunAsync(
        RecordsSession session,
        Guid input,
        CancellationToken cancellation
    ) =>
        await session
            .Records.ImportFiles.Where(file => file.Id == input)
            .Select(file => new StagedFile(file.Id, file.FileName, file.Content, file.HandedInAt, file.AppliedAt))
            .FirstOrDefaultAsync(cancellation)
            is { } staged
            ? staged
            : RecordProblems.NotFound("importFile");
}
