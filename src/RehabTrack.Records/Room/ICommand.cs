namespace RehabTrack.Records.Room;

/// <summary>What is written in answer to one wish of a person.</summary>
public interface ICommand
{
    /// <summary>Names the wish: made once when the person presses, sent again on every retry, so that a repeat does nothing twice.</summary>
    public Guid CommandId { get; }
}
