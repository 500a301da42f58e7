using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Room;

/// <summary>Somebody wrote between reading and saving: nothing was saved, and what stands now is to be looked at first.</summary>
public static class ChangedMeanwhile
{
    /// <summary>The code of the problem that says so.</summary>
    public const string Code = "changed-meanwhile";

    /// <summary>Whether one of the problems says so.</summary>
    public static bool IsIn(IEnumerable<Problem> problems) => problems.Any(problem => problem.Code == Code);
}
