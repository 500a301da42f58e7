namespace RehabTrack.Rechecks.Quantities;

/// <summary>One row of a reference table.</summary>
/// <param name="Name">The row's name.</param>
/// <param name="Value">The value, in the unit.</param>
/// <param name="Unit">UCUM unit, or <c>1</c> for a pure number.</param>
/// <param name="Source">Where the value comes from; <c>common practice, no source</c> where there is none.</param>
public sealed record ReferenceValue(string Name, double Value, string Unit, string Source);
