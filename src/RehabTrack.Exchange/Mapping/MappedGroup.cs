namespace RehabTrack.Exchange.Mapping;

/// <summary>The columns of one examination, in a sheet that has a group of columns for each.</summary>
/// <param name="Date">The date of the examination as it stands in the headings.</param>
/// <param name="Columns">What its columns mean.</param>
public sealed record MappedGroup(string Date, IReadOnlyList<MappedColumn> Columns);
