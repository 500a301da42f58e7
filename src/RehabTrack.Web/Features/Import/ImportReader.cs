using RehabTrack.Exchange;
using RehabTrack.Exchange.Mapping;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Web.Features.Import;

/// <summary>Reads a file that was handed in, with the mapping that the practice remembers for its headings.</summary>
public sealed class ImportReader(GetStagedFile getFile, GetPractice getPractice, FindMapping findMapping)
{
    /// <summary>Reads it.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="fileId">The file.</param>
    /// <param name="progress">Told the number of rows read so far.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<Outcome<ImportReading>> ReadAsync(
        Actor actor,
        Guid fileId,
        IProgress<int>? progress = null,
        CancellationToken cancellation = default
    )
    {
        Outcome<StagedFile> file = await getFile.ExecuteAsync(actor, fileId, cancellation);
        if (!file.Succeeded)
        {
            return file.Problems.ToList();
        }

        Outcome<PracticeView> practice = await getPractice.ExecuteAsync(actor, NoInput.Value, cancellation);
        if (!practice.Succeeded)
        {
            return practice.Problems.ToList();
        }

        DateOnly today = practice.Value.Today;
        // A large sheet takes seconds: elsewhere than on the thread of the page.
        SheetResult sheet = await Task.Run(() => Read(file.Value, today, null, progress, cancellation), cancellation);
        SheetMapping? mapping = null;
        // What somebody said of a column that the import sheet does not have counts as well.
        if (sheet.Shape is { } shape && (sheet.NeedsMapping || ImportReading.Unread(sheet).Any()))
        {
            Outcome<string> remembered = await findMapping.ExecuteAsync(actor, shape.Fingerprint, cancellation);
            mapping = remembered.Succeeded ? SheetMapping.FromJson(remembered.Value) : null;
            if (mapping is not null && MappingRules.Check(mapping, shape).Count == 0)
            {
                sheet = await Task.Run(() => Read(file.Value, today, mapping, progress, cancellation), cancellation);
            }
        }

        return new ImportReading(file.Value, sheet, mapping);
    }

    private static SheetResult Read(
        StagedFile file,
        DateOnly today,
        SheetMapping? mapping,
        IProgress<int>? progress,
        CancellationToken cancellation
    )
    {
        using MemoryStream stream = new(file.Content, writable: false);
        return SheetImport.Read(stream, today, mapping, progress, cancellation);
    }
}
