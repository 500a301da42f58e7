namespace RehabTrack.Rechecks.Exams;

/// <summary>One case as a file gives it: what import reads and batch analysis takes.</summary>
/// <param name="Label">The file's name of the case.</param>
/// <param name="Horse">By what the file names the horse.</param>
/// <param name="Course">The case; its id is the label, a reading's id is its line number in the file.</param>
public sealed record CaseFile(string Label, HorseIdentity Horse, CaseCourse Course);
