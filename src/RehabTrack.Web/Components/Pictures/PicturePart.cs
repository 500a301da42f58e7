namespace RehabTrack.Web.Components.Pictures;

/// <summary>A part of a picture that was pressed.</summary>
/// <param name="ExaminationId">Its examination.</param>
/// <param name="TrackId">Its track; null where the part is a whole examination.</param>
public sealed record PicturePart(string ExaminationId, string? TrackId);
