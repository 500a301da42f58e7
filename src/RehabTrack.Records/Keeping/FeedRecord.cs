namespace RehabTrack.Records.Keeping;

/// <summary>A secret address under which the practice's booked rechecks can be read.</summary>
internal sealed class FeedRecord : SecretRecord;
