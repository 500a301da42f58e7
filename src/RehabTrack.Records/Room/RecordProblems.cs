using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Room;

/// <summary>The problems that keeping records knows of its own.</summary>
internal static class RecordProblems
{
    private const string Absent = "not-found";

    /// <summary>The right is not given, to this person, now.</summary>
    public static Problem NotAllowed { get; } = new("", "not-allowed");

    /// <summary>A signature is asked for, and the person has not just shown afresh who they are.</summary>
    public static Problem NotConfirmed { get; } = new("", "not-confirmed");

    /// <summary>The command was carried out before, for something else.</summary>
    public static Problem CommandReused { get; } = new("", "command-reused");

    /// <summary>The command was carried out, and what it answered was erased with somebody's data.</summary>
    public static Problem AnswerErased { get; } = new("", "answer-erased");

    /// <summary>Nothing of that id is there, for this practice.</summary>
    public static Problem NotFound(string field) => new(field, Absent);

    /// <summary>Whether nothing of that id is there.</summary>
    public static bool IsNotFound(Problem problem) => problem.Code == Absent;

    /// <summary>The right to do it is given, but not to this.</summary>
    public static Problem VetOnly(string field) => new(field, "vet-only");

    /// <summary>The right to sign is given, but another vet is responsible for the horse.</summary>
    public static Problem OtherVet(IEnumerable<string> names) => new("", "other-vet-responsible", string.Join(", ", names));

    /// <summary>Somebody wrote in between, and nothing tells the two apart field by field.</summary>
    public static Problem ChangedMeanwhile { get; } = new("", Room.ChangedMeanwhile.Code, "", "");
}
