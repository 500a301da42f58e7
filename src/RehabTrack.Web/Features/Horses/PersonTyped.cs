using RehabTrack.Records.Horses;

namespace RehabTrack.Web.Features.Horses;

/// <summary>A person as typed into a field: somebody who is known, or words that name nobody yet.</summary>
/// <param name="Id">Who it is; null while nobody.</param>
/// <param name="Text">What stands in the field.</param>
public sealed record PersonTyped(Guid? Id, string Text)
{
    /// <summary>Nothing typed.</summary>
    public static PersonTyped Nobody { get; } = new(null, "");

    /// <summary>Whoever stands beside a horse; nobody for none.</summary>
    public static PersonTyped Of(HorsePersonView? person) => person is null ? Nobody : new PersonTyped(person.PersonId, person.Name);

    /// <summary>Whether both are the same person, however named, or the same words.</summary>
    public bool Equals(PersonTyped? other) =>
        other is not null && Id == other.Id && (Id is not null || string.Equals(Text.Trim(), other.Text.Trim(), StringComparison.Ordinal));

    /// <inheritdoc />
    public override int GetHashCode() => Id?.GetHashCode() ?? StringComparer.Ordinal.GetHashCode(Text.Trim());
}
