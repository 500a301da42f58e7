using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>A draft to be signed, as it was read.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="Id">The draft.</param>
/// <param name="Version">The version that was read.</param>
/// <param name="SeenHash">
/// The input hash of the analysis that the person was shown, with this examination signed; null when none was shown. When the records
/// say something else by now, nothing is signed.
/// </param>
public sealed record SignExaminationInput(Guid CommandId, Guid Id, Guid Version, string? SeenHash = null) : ICommand;
