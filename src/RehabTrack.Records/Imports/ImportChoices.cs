namespace RehabTrack.Records.Imports;

/// <summary>What a person chose about a file.</summary>
public sealed record ImportChoices
{
    /// <summary>Choices by the label of the case; a case without one takes what is usual.</summary>
    public IReadOnlyDictionary<string, CaseChoice> Cases { get; init; } = new Dictionary<string, CaseChoice>(StringComparer.Ordinal);

    /// <summary>Whether all that differs is taken from the file as an amendment.</summary>
    public bool AmendAll { get; init; }

    /// <summary>Why; asked for when anything is amended.</summary>
    public string? Reason { get; init; }

    internal CaseChoice Of(string label) => Cases.GetValueOrDefault(label) ?? CaseChoice.Usual;
}
