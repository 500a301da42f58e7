namespace RehabTrack.Records.Reminders;

/// <summary>A reminder by mail.</summary>
/// <param name="Id">Identity.</param>
/// <param name="To">Who it was written to.</param>
/// <param name="Mail">The address.</param>
/// <param name="State">What became of it.</param>
/// <param name="Trouble">The code of what went wrong; null when nothing did.</param>
/// <param name="By">Who sent it.</param>
/// <param name="At">When it was begun, UTC.</param>
public sealed record ReminderView(Guid Id, string To, string Mail, ReminderState State, string? Trouble, string By, DateTime At);
