using RehabTrack.Exchange;
using RehabTrack.Exchange.Mapping;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Imports;

namespace RehabTrack.Web.Features.Import;

/// <summary>A file that was handed in, as far as it could be read.</summary>
/// <param name="File">The file.</param>
/// <param name="Sheet">What it holds and what is wrong with it.</param>
/// <param name="Mapping">What its columns were taken for; null when they are the canonical ones, or nothing is remembered.</param>
public sealed record ImportReading(StagedFile File, SheetResult Sheet, SheetMapping? Mapping)
{
    /// <summary>The code of the caution for a column that the import sheet does not have.</summary>
    public const string NotReadCode = "column-not-read";

    /// <summary>The columns of a sheet that were not read, a caution each.</summary>
    public static IEnumerable<Problem> Unread(SheetResult sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return sheet.Cautions.Select(caution => caution.Problem).Where(problem => problem.Code == NotReadCode);
    }
}
