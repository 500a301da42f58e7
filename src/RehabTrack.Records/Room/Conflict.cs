using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Room;

/// <summary>
/// Somebody wrote between reading and saving. Each field in which the two differ becomes a problem with both values: what is kept, then
/// what was entered. When none differs, there is nothing to decide.
/// </summary>
internal sealed class Conflict
{
    private readonly List<Problem> problems = [];

    public bool Any => problems.Count > 0;

    public List<Problem> Problems => problems;

    public Conflict Field(string field, object? kept, object? entered)
    {
        if (!Equals(kept, entered))
        {
            problems.Add(new(field, ChangedMeanwhile.Code, RecordText.Of(kept), RecordText.Of(entered)));
        }

        return this;
    }
}
