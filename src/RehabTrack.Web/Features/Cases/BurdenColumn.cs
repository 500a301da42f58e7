using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Web.Features.Cases;

/// <summary>A column of the table of burdens.</summary>
/// <param name="Name">Its heading.</param>
/// <param name="Look">Its class; null for text.</param>
/// <param name="Has">Whether a burden has the figure.</param>
/// <param name="Say">The figure in words.</param>
internal sealed record BurdenColumn(string Name, string? Look, Func<ExaminationBurden, bool> Has, Func<ExaminationBurden, string> Say);
