using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Imports;

/// <summary>The horses a file would make: one for all cases that name the same chip, or the same name with nothing against it.</summary>
internal sealed class PlannedHorses
{
    private readonly Dictionary<string, PlannedHorse> byChip = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<PlannedHorse>> byName = new(StringComparer.Ordinal);

    public PlannedHorse Of(string name, HorseIdentity identity)
    {
        string? chip = identity.Microchip is { } given ? HorseRegister.ChipKey(given) : null;
        string folded = Folded.Of(name);
        if (!byName.TryGetValue(folded, out List<PlannedHorse>? named))
        {
            byName.Add(folded, named = []);
        }

        PlannedHorse? horse =
            chip is not null && byChip.TryGetValue(chip, out PlannedHorse? chipped) && chipped.TryJoin(identity)
                ? chipped
                : named.Find(other => other.TryJoin(identity));
        if (horse is null)
        {
            horse = new PlannedHorse(name, identity);
            named.Add(horse);
        }

        if (chip is not null)
        {
            byChip.TryAdd(chip, horse);
        }

        return horse;
    }
}
