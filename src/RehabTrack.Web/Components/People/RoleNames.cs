using RehabTrack.Records.Horses;
using RehabTrack.Records.Rights;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.People;

/// <summary>What pages call roles, sexes and what a person is to a horse.</summary>
public static class RoleNames
{
    /// <summary>A role, as "vet".</summary>
    public static string Of(Role role) => Text(nameof(Role), role.ToString());

    /// <summary>What a person is to a horse, as "owner".</summary>
    public static string Of(HorseRelation relation) => Text(nameof(HorseRelation), relation.ToString());

    /// <summary>A sex, as "mare".</summary>
    public static string Of(Sex sex) => Text(nameof(Sex), sex.ToString());

    private static string Text(string subject, string member) =>
        PeopleTexts.ResourceManager.GetString($"{subject}_{member}", TextCulture.Default)
        ?? throw new ArgumentOutOfRangeException(nameof(member), member, $"{subject} has no text for this member.");
}
