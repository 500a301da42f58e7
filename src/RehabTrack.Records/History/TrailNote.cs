namespace RehabTrack.Records.History;

/// <summary>A noted line of a practice's trail.</summary>
/// <param name="PracticeId">The practice; null where it was not named.</param>
/// <param name="Anchor">The line.</param>
public sealed record TrailNote(Guid? PracticeId, TrailAnchor Anchor)
{
    private const char Between = '/';

    /// <summary>Reads "PRACTICE/NUMBER:HASH" or "NUMBER:HASH"; null for anything else.</summary>
    public static TrailNote? Parse(string? text)
    {
        string trimmed = (text ?? "").Trim();
        int at = trimmed.IndexOf(Between, StringComparison.Ordinal);
        if (at < 0)
        {
            return TrailAnchor.Parse(trimmed) is { } alone ? new TrailNote(null, alone) : null;
        }

        return Guid.TryParseExact(trimmed[..at], "D", out Guid practice) && TrailAnchor.Parse(trimmed[(at + 1)..]) is { } anchor
            ? new TrailNote(practice, anchor)
            : null;
    }

    /// <inheritdoc />
    public override string ToString() => PracticeId is { } practice ? $"{practice:D}{Between}{Anchor}" : Anchor.ToString();
}
