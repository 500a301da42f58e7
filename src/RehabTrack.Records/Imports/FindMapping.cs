using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Imports;

/// <summary>Finds how a sheet was read before, as JSON, by the fingerprint of its headings.</summary>
public sealed class FindMapping(RecordsAccess access) : UseCase<string, string>(access)
{
    private protected override Right Right => Right.Import;

    private protected override async Task<Outcome<string>> RunAsync(RecordsSession session, string input, CancellationToken cancellation) =>
        await session
            .Records.ImportMappings.Where(mapping => mapping.Fingerprint == input)
            .Select(mapping => mapping.MappingJson)
            .FirstOrDefaultAsync(cancellation)
            is { } mapping
            ? mapping
            : RecordProblems.NotFound("mapping");
}
