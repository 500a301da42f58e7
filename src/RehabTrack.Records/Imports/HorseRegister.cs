using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Imports;

/// <summary>All horses of the practice by what tells them apart, so that a file's horses are found without asking for each.</summary>
internal sealed class HorseRegister
{
    private readonly Dictionary<Guid, HorseRecord> byId = [];
    private readonly Dictionary<string, List<HorseRecord>> byChip = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<HorseRecord>> byName = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<HorseRecord>> byCaseLabel = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HashSet<HorseRecord>> byShortenedName = new(StringComparer.Ordinal);

    private HorseRegister(IEnumerable<HorseRecord> horses, IEnumerable<(Guid HorseId, string Label)> labels)
    {
        foreach (HorseRecord horse in horses)
        {
            byId.Add(horse.Id, horse);
            Add(byName, horse.FoldedName, horse);
            if (horse.Microchip is { } chip)
            {
                Add(byChip, ChipKey(chip), horse);
            }

            foreach (string shortened in Shortened(horse.FoldedName))
            {
                if (!byShortenedName.TryGetValue(shortened, out HashSet<HorseRecord>? alike))
                {
                    byShortenedName.Add(shortened, alike = []);
                }

                alike.Add(horse);
            }
        }

        foreach ((Guid horseId, string label) in labels.DistinctBy(one => (one.HorseId, Folded.Of(one.Label))))
        {
            if (Find(horseId) is { } horse)
            {
                Add(byCaseLabel, Folded.Of(label), horse);
            }
        }
    }

    public static async Task<HorseRegister> ReadAsync(RecordsContext records, CancellationToken cancellation)
    {
        HorseRecord[] horses = await records
            .Horses.AsNoTracking()
            .Where(horse => horse.ArchivedAt == null)
            .OrderBy(horse => horse.Id)
            .ToArrayAsync(cancellation);
        var labels = await records
            .Cases.AsNoTracking()
            .Where(injury => injury.ArchivedAt == null && injury.ImportLabel != null)
            .OrderBy(injury => injury.Id)
            .Select(injury => new { injury.HorseId, Label = injury.ImportLabel! })
            .ToArrayAsync(cancellation);
        return new HorseRegister(horses, labels.Select(injury => (injury.HorseId, injury.Label)));
    }

    public HorseRecord? Find(Guid id) => byId.GetValueOrDefault(id);

    /// <summary>
    /// Horses of the same name with nothing that speaks against it. A file that names no horse means the one whose case bears its label.
    /// </summary>
    public IReadOnlyList<HorseRecord> Exact(string name, HorseIdentity identity) =>
        [
            .. (string.IsNullOrWhiteSpace(identity.Name) ? byCaseLabel.GetValueOrDefault(Folded.Of(name)) ?? [] : [])
                .Concat(Named(name))
                .Distinct()
                .Where(horse => Agrees(horse, identity)),
        ];

    /// <summary>Horses that may be the same, most alike first; none of those that <see cref="Exact"/> finds, save by chip.</summary>
    public IReadOnlyList<(HorseRecord Horse, HorseLikeness Likeness)> Alike(string name, HorseIdentity identity)
    {
        string folded = Folded.Of(name);
        IEnumerable<(HorseRecord Horse, HorseLikeness Likeness)> chip = identity.Microchip is { } microchip
            ? (byChip.GetValueOrDefault(ChipKey(microchip)) ?? [])
                .Where(horse => horse.FoldedName != folded)
                .Select(horse => (horse, HorseLikeness.SameChip))
            : [];
        IEnumerable<(HorseRecord Horse, HorseLikeness Likeness)> sameName = Named(name)
            .Where(horse => !Agrees(horse, identity))
            .Select(horse => (horse, HorseLikeness.SameNameOtherMark));
        IEnumerable<(HorseRecord Horse, HorseLikeness Likeness)> similar = Shortened(folded)
            .SelectMany(shortened => byShortenedName.GetValueOrDefault(shortened) ?? [])
            .Where(horse => horse.FoldedName != folded)
            .Select(horse => (horse, HorseLikeness.SimilarName));
        return [.. chip.Concat(sameName).Concat(similar).DistinctBy(found => found.Horse.Id)];
    }

    /// <summary>Whether chip and birth, where both are known, are the same.</summary>
    public static bool Agrees(HorseRecord horse, HorseIdentity identity) =>
        (horse.Microchip is null || identity.Microchip is null || ChipKey(horse.Microchip) == ChipKey(identity.Microchip))
        && (
            identity.BirthDate is not { } birth
            || ((horse.BirthDate is null || horse.BirthDate == birth) && (horse.BirthYear is null || horse.BirthYear == birth.Year))
        );

    public static string ChipKey(string chip) => Folded.Of(chip).Replace(" ", "", StringComparison.Ordinal);

    private List<HorseRecord> Named(string name) => byName.GetValueOrDefault(Folded.Of(name)) ?? [];

    /// <summary>The name without spaces and marks, and each way of leaving one letter out: two names a letter apart share one of them.</summary>
    private static IEnumerable<string> Shortened(string folded)
    {
        const int ShortestCompared = 4;
        string bare = string.Concat(folded.Where(char.IsLetterOrDigit));
        yield return bare;
        if (bare.Length < ShortestCompared)
        {
            yield break;
        }

        for (int index = 0; index < bare.Length; index++)
        {
            yield return bare.Remove(index, 1);
        }
    }

    private static void Add(Dictionary<string, List<HorseRecord>> lists, string key, HorseRecord horse)
    {
        if (!lists.TryGetValue(key, out List<HorseRecord>? list))
        {
            lists.Add(key, list = []);
        }

        list.Add(horse);
    }
}
