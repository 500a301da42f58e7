namespace RehabTrack.Records.Start;

/// <summary>A vet of the demo who stands in for another.</summary>
/// <param name="Vet">Who is away; by key.</param>
/// <param name="By">Who stands in; by key.</param>
/// <param name="Set">When it was set.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
public sealed record DemoCover(string Vet, string By, DateOnly Set, DateOnly From, DateOnly To);
