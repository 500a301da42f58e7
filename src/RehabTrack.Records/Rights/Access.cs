using RehabTrack.Records.Keeping;
using RehabTrack.Records.Shares;

namespace RehabTrack.Records.Rights;

/// <summary>
/// What the gate found: the person and the practice as they are now, how far the right reaches, and to what a share link holds it; no scope
/// for who signed in; the session they signed in with; none for a share link and for the program itself.
/// </summary>
internal sealed record Access(Reach Reach, PersonRecord Person, PracticeRecord Practice, ShareScope? Scope, SessionRecord? Session);
