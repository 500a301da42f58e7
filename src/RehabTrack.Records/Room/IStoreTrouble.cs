using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Room;

/// <summary>Tells trouble of the machine that a person can mend, such as a full disk, from a bug. A provider knows its database.</summary>
internal interface IStoreTrouble
{
    /// <summary>The problem; null when the exception is none of these.</summary>
    public Problem? Of(Exception broken);
}
