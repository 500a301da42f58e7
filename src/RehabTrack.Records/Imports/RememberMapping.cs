using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Imports;

/// <summary>Remembers for the practice how a sheet is read; the latest word counts.</summary>
public sealed class RememberMapping(RecordsAccess access) : Command<RememberMappingInput, Saved>(access)
{
    private protected override Right Right => Right.Import;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        RememberMappingInput input,
        CancellationToken cancellation
    )
    {
        Checks checks = new();
        string fingerprint = checks.Name("fingerprint", input.Fingerprint);
        if (checks.Any)
        {
            return checks.Problems;
        }

        ImportMappingRecord? mapping = await session.Records.ImportMappings.FirstOrDefaultAsync(
            record => record.Fingerprint == fingerprint,
            cancellation
        );
        if (mapping is null)
        {
            mapping = new ImportMappingRecord
            {
                Id = session.NewId(),
                Fingerprint = fingerprint,
                MappingJson = input.Mapping,
            };
            session.Records.ImportMappings.Add(mapping);
        }

        mapping.MappingJson = input.Mapping;
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(mapping.Id, mapping.Version);
    }
}
