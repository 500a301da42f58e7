using RehabTrack.Records.Keeping;
using RehabTrack.Records.Shares;

namespace RehabTrack.Records.Rights;

/// <summary>
/// What the gate found: the person and the practice as they are now, how far the right reaches, and to what a share link holds it; no scope
/// for who signed in; whether the person showed afresh who they are, so that a signature may be given.
/// </summary>
internal sealed record Access(Reach Reach, PersonRecord Person, PracticeRecord Practice, ShareScope? Scope, bool IsConfirmed);
