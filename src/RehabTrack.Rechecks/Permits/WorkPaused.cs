namespace RehabTrack.Rechecks.Permits;

/// <summary>Somebody, vet or not, said that the horse does not work or is away. After more than the days of the setting a vet's word is needed.</summary>
public sealed record WorkPaused : PermitEntry
{
    /// <summary>The first day.</summary>
    public required DateOnly From { get; init; }

    /// <summary>The last day; null for no end given.</summary>
    public DateOnly? Until { get; init; }
}
