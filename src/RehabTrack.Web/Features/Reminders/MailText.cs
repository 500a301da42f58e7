namespace RehabTrack.Web.Features.Reminders;

/// <summary>A letter.</summary>
/// <param name="Subject">Its subject.</param>
/// <param name="Body">Its text, lines ended by line feeds.</param>
public sealed record MailText(string Subject, string Body);
