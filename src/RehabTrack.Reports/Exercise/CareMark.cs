using RehabTrack.Rechecks.Care;

namespace RehabTrack.Reports.Exercise;

/// <summary>A treatment, medicine or sign on the time axis.</summary>
/// <param name="Group">Its row.</param>
/// <param name="From">The first day.</param>
/// <param name="Until">The last day; null for one day, and for a medicine still given.</param>
/// <param name="Text">A word or two, beside the mark.</param>
/// <param name="Full">All it says, for the table.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="IsIntoLesion">Whether it was put into the lesion.</param>
/// <param name="IsFromLog">Whether it was seen at the yard.</param>
public sealed record CareMark(
    CareGroup Group,
    DateOnly From,
    DateOnly? Until,
    string Text,
    string Full,
    string Source,
    bool IsIntoLesion = false,
    bool IsFromLog = false
);
