using System.Globalization;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Room;

namespace RehabTrack.Drills.Kill;

/// <summary>What a worker said was kept.</summary>
internal sealed class Acknowledged
{
    private readonly HashSet<Guid> horses = [];
    private readonly Dictionary<Guid, int> examinations = [];
    private readonly HashSet<Guid> signed = [];
    private readonly Dictionary<Guid, int> lines = [];
    private readonly Dictionary<Guid, int> photos = [];
    private readonly Dictionary<Guid, int> imports = [];

    public int Writes { get; private set; }

    /// <summary>Takes a line; the last one of a killed process may be cut off, and says nothing then.</summary>
    public void Take(string line)
    {
        if (
            line.Split(' ') is not [string what, string id, string number]
            || !Guid.TryParseExact(id, "D", out Guid record)
            || !int.TryParse(number, CultureInfo.InvariantCulture, out int mark)
            || what == "ready"
        )
        {
            return;
        }

        Writes++;
        switch (what)
        {
            case "horse":
                horses.Add(record);
                break;
            case "signed":
                signed.Add(record);
                break;
            case "lines":
                lines[record] = mark;
                break;
            case "photo":
                photos[record] = mark;
                break;
            case "import":
                imports[record] = mark;
                break;
            default:
                examinations[record] = mark;
                break;
        }
    }

    public void Take(Acknowledged other)
    {
        Writes += other.Writes;
        horses.UnionWith(other.horses);
        signed.UnionWith(other.signed);
        Take(examinations, other.examinations);
        Take(lines, other.lines);
        Take(photos, other.photos);
        Take(imports, other.imports);
    }

    /// <summary>A copy: what was said up to now.</summary>
    public Acknowledged Snapshot()
    {
        Acknowledged copy = new();
        copy.Take(this);
        return copy;
    }

    /// <summary>What of it is not there, or only half there.</summary>
    /// <param name="house">The records after the kill.</param>
    /// <param name="goesOn">Whether more was written after the last line: then a later number is no surprise.</param>
    public async Task<List<string>> LostAsync(DrillHouse house, bool goesOn)
    {
        List<string> lost = [];
        foreach (Guid horse in horses)
        {
            if (!(await house.Get<GetHorse>().ExecuteAsync(house.Vet, horse)).Succeeded)
            {
                lost.Add($"horse {horse}");
            }
        }

        foreach ((Guid id, int number) in examinations)
        {
            Outcome<ExaminationView> read = await house.Get<GetExamination>().ExecuteAsync(house.Vet, id);
            if (!read.Succeeded)
            {
                lost.Add($"examination {id}");
                continue;
            }

            (int? kept, string? torn) = Writing.NumberOf(read.Value.Content);
            if (torn is not null)
            {
                lost.Add($"half an examination {id}: {torn}");
            }
            else if (number > 0 && (kept is null || kept < number || (kept > number + 1 && !goesOn)))
            {
                lost.Add($"examination {id}: acknowledged {number}, kept {kept?.ToString(CultureInfo.InvariantCulture) ?? "nothing"}");
            }
            else if (signed.Contains(id) && read.Value.State != Rechecks.Exams.ExaminationState.Signed)
            {
                lost.Add($"signature of {id}");
            }
        }

        foreach ((Guid horse, int number) in lines)
        {
            ExerciseView view = await Writing.ExerciseAsync(house, horse);
            if (view.LastNumber < number)
            {
                lost.Add($"exercise of {horse}: acknowledged {number} lines, kept {view.LastNumber}");
            }
            else if (Writing.TornOf(view) is { } torn)
            {
                lost.Add($"half a line of {horse}: {torn}");
            }
        }

        foreach ((Guid horse, int mark) in photos)
        {
            byte[] kept = (await house.Get<GetHorsePhoto>().ExecuteAsync(house.Vet, horse)).ValueOrDefault?.Content ?? [];
            if (kept.Length == 0 || kept[^1] < mark || !kept.AsSpan().SequenceEqual(Writing.Photo(kept[^1])))
            {
                lost.Add($"photo of {horse}: acknowledged {mark}, kept {kept.Length} bytes");
            }
        }

        foreach ((Guid id, int visits) in imports)
        {
            CaseView? view = (await house.Get<GetCase>().ExecuteAsync(house.Vet, id)).ValueOrDefault;
            if (view is null || view.Course.Examinations.Count != visits || view.Course.Examinations.Any(one => one.Readings.Count != 3))
            {
                lost.Add($"import of {id}: {view?.Course.Examinations.Count ?? 0} of {visits} examinations");
            }
        }

        return lost;
    }

    private static void Take(Dictionary<Guid, int> numbers, Dictionary<Guid, int> others)
    {
        foreach ((Guid id, int number) in others)
        {
            numbers[id] = number;
        }
    }
}
