using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Records.Imports;

/// <summary>A horse that a file would make; several cases of the file can share it.</summary>
internal sealed class PlannedHorse(string name, HorseIdentity identity)
{
    public string Name { get; } = name;

    public string? Microchip { get; private set; } = identity.Microchip;

    public DateOnly? BirthDate { get; private set; } = identity.BirthDate;

    /// <summary>Takes what another case of the file adds, where it is the same horse.</summary>
    public bool TryJoin(HorseIdentity other)
    {
        bool sameChip =
            Microchip is null || other.Microchip is null || HorseRegister.ChipKey(Microchip) == HorseRegister.ChipKey(other.Microchip);
        if (!sameChip || (BirthDate is not null && other.BirthDate is not null && BirthDate != other.BirthDate))
        {
            return false;
        }

        Microchip ??= other.Microchip;
        BirthDate ??= other.BirthDate;
        return true;
    }
}
