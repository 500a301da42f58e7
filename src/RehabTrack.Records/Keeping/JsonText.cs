namespace RehabTrack.Records.Keeping;

/// <summary>Functions of the database on texts that hold JSON; they run there, so that what is taken out never leaves it.</summary>
internal static class JsonText
{
    /// <summary>The same JSON without what stands at a path; unchanged when nothing stands there.</summary>
    /// <param name="json">The JSON.</param>
    /// <param name="path">The path, as "$.decision.reason".</param>
    public static string Without(string json, string path) =>
        throw new NotSupportedException($"The database does this: {path} of {json.Length} letters.");
}
