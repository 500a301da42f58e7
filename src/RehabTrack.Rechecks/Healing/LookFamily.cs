namespace RehabTrack.Rechecks.Healing;

/// <summary>How the two dates of a comparison were chosen.</summary>
internal enum LookFamily
{
    Once,
    WithBaseline,
    Neighbouring,
    AnyTwo,
}
