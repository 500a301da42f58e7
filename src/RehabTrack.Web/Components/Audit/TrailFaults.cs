using RehabTrack.Records.History;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Audit;

/// <summary>What does not fit of a trail, as a sentence.</summary>
public static class TrailFaults
{
    /// <summary>The sentence of the first line that does not fit; its time is UTC.</summary>
    public static string Sentence(TrailBreak broken)
    {
        ArgumentNullException.ThrowIfNull(broken);
        string text = broken.Why switch
        {
            TrailFault.Changed => TrailTexts.Fault_Changed,
            TrailFault.Missing => TrailTexts.Fault_Missing,
            TrailFault.OutOfOrder => TrailTexts.Fault_OutOfOrder,
            TrailFault.WithoutNumber => TrailTexts.Fault_WithoutNumber,
            TrailFault.EmptiedUnsaid => TrailTexts.Fault_EmptiedUnsaid,
            TrailFault.NotAsNoted => TrailTexts.Fault_NotAsNoted,
        };
        return string.Format(TextCulture.Default, text, broken.Number, Moments.Utc(broken.At));
    }
}
