namespace RehabTrack.Records.Covers;

/// <summary>A vet who stands in for another.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Version">Version token.</param>
/// <param name="VetId">The vet who is away.</param>
/// <param name="Vet">That vet's name.</param>
/// <param name="CoveringVetId">The vet who stands in, in their own name.</param>
/// <param name="CoveringVet">That vet's name.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
public sealed record CoverView(
    Guid Id,
    Guid Version,
    Guid VetId,
    string Vet,
    Guid CoveringVetId,
    string CoveringVet,
    DateOnly From,
    DateOnly To
)
{
    /// <summary>Whether it holds on a day.</summary>
    public bool Holds(DateOnly day) => From <= day && day <= To;
}
