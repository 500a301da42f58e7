using RehabTrack.Records.Rights;

namespace RehabTrack.Records.Start;

/// <summary>What the first practice on a server begins with; it is changed on the practice's page.</summary>
/// <param name="PracticeName">Name of the practice.</param>
/// <param name="Phone">Its telephone, which owners and trainers are told to call.</param>
/// <param name="TimeZone">Time zone, as "Europe/Vienna".</param>
/// <param name="Language">Language, as "en".</param>
/// <param name="PersonName">Name of the first person.</param>
/// <param name="Role">What that person is: an administrator, or a vet who also looks after people and settings.</param>
public sealed record FirstPractice(string PracticeName, string? Phone, string TimeZone, string Language, string PersonName, Role Role)
{
    /// <summary>Days from a signed examination to the recheck; null takes the table.</summary>
    public int? RecheckIntervalDays { get; init; }
}
