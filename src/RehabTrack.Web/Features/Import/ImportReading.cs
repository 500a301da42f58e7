using RehabTrack.Exchange;
using RehabTrack.Exchange.Mapping;
using RehabTrack.Records.Imports;

namespace RehabTrack.Web.Features.Import;

/// <summary>A file that was handed in, as far as it could be read.</summary>
/// <param name="File">The file.</param>
/// <param name="Sheet">What it holds and what is wrong with it.</param>
/// <param name="Mapping">What its columns were taken for; null when they are the canonical ones, or nothing is remembered.</param>
public sealed record ImportReading(StagedFile File, SheetResult Sheet, SheetMapping? Mapping);
