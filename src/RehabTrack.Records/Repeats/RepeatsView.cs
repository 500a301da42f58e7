using RehabTrack.Rechecks.Repeats;
using RehabTrack.Records.Practices;

namespace RehabTrack.Records.Repeats;

/// <summary>All repeat tracings of the practice.</summary>
/// <param name="Practice">The practice with its settings.</param>
/// <param name="Entered">Those entered on the page, oldest first.</param>
/// <param name="FromExaminations">Those that signed and imported examinations hold: several tracings of one level.</param>
public sealed record RepeatsView(PracticeView Practice, IReadOnlyList<RepeatView> Entered, IReadOnlyList<RepeatTracing> FromExaminations)
{
    /// <summary>What they tell, by kind and size.</summary>
    public IReadOnlyList<RepeatStudy> Studies => RepeatStudy.Of(Entered.Select(row => row.Tracing).Concat(FromExaminations));
}
