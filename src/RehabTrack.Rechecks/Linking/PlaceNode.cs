using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Rechecks.Linking;

/// <summary>A place as the linker sees it: plain numbers, not a number where nothing was recorded.</summary>
internal sealed class PlaceNode
{
    public required Place Place { get; init; }

    /// <summary>Index of the examination in order of date and id.</summary>
    public required int Examination { get; init; }

    /// <summary>Index of the path among those of the case.</summary>
    public required int Path { get; init; }

    /// <summary>On that day's tape, counted from the common landmark, cm.</summary>
    public required double Level { get; init; }

    public required double LogLigamentArea { get; init; }

    public required double LogThickness { get; init; }

    /// <summary>Lesion area in units of the case's floor; 0 when none was seen.</summary>
    public required double Lesion { get; init; }

    /// <summary>The pinned group, or −1.</summary>
    public int Group { get; set; } = -1;

    public TrackColumn? Column { get; set; }

    /// <summary>Probability of the link to the column it stands on, of the last alignment.</summary>
    public double Probability { get; set; }

    /// <summary>The other columns it may belong to, with their probabilities, of the last alignment.</summary>
    public List<(TrackColumn Column, double Probability)> Others { get; } = [];
}
