namespace RehabTrack.Exchange.Mapping;

/// <summary>What one column of a foreign sheet means.</summary>
/// <param name="Index">Its place among the headings, from 0.</param>
/// <param name="Column">The column of the import sheet.</param>
/// <param name="Unit">The unit of its numbers; without meaning for columns that are no length or area.</param>
public sealed record MappedColumn(int Index, string Column, MappedUnit Unit = MappedUnit.Centimetre);
