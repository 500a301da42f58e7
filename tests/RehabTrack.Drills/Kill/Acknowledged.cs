using System.Globalization;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Room;

namespace RehabTrack.Drills.Kill;

/// <summary>What a worker said was kept.</summary>
internal sealed class Acknowledged
{
    private readonly HashSet<Guid> horses = [];
    private readonly Dictionary<Guid, int> examinations = [];
    private readonly HashSet<Guid> signed = [];

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
        foreach ((Guid id, int number) in other.examinations)
        {
            examinations[id] = number;
        }
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

        return lost;
    }
}
