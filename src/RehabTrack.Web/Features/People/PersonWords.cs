using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Web.Components;
using RehabTrack.Web.Components.People;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.People;

/// <summary>People in a line each, and the groups they are listed in.</summary>
public static class PersonWords
{
    private const int MostHorses = 6;

    /// <summary>The heading a role stands under: all staff together.</summary>
    public static string GroupOf(Role role) =>
        role switch
        {
            Role.Administrator or Role.Vet or Role.Assistant => PeoplePage.GroupStaff,
            Role.Trainer => PeoplePage.GroupTrainers,
            Role.Owner => PeoplePage.GroupOwners,
            Role.ReferringVet => PeoplePage.GroupReferring,
        };

    /// <summary>The order of those headings; within staff, vets first.</summary>
    public static int OrderOf(Role role) =>
        role switch
        {
            Role.Vet => 0,
            Role.Assistant => 1,
            Role.Administrator => 2,
            Role.Owner => 3,
            Role.Trainer => 4,
            Role.ReferringVet => 5,
        };

    /// <summary>The horses a person stands beside, as "Juniper, Pepper and 3 more".</summary>
    public static string Horses(PersonView person)
    {
        ArgumentNullException.ThrowIfNull(person);
        string[] names = [.. person.Horses.Select(horse => horse.Name).Distinct(StringComparer.Ordinal)];
        string shown = string.Join(", ", names.Take(MostHorses));
        return names.Length > MostHorses ? string.Format(TextCulture.Default, PeoplePage.AndMore, shown, names.Length - MostHorses) : shown;
    }

    /// <summary>How many horses stand in a yard.</summary>
    public static string HorsesIn(YardView yard)
    {
        ArgumentNullException.ThrowIfNull(yard);
        return yard.HorseCount == 0 ? PeoplePage.NoHorse : Counted.Horses(yard.HorseCount);
    }

    /// <summary>A role as a title.</summary>
    public static string Title(Role role) => Names.AsTitle(RoleNames.Of(role));
}
