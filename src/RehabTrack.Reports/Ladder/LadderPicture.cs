using RehabTrack.Reports.Pictures;

namespace RehabTrack.Reports.Ladder;

/// <summary>A ladder, with which examinations it shows.</summary>
public sealed record LadderPicture : Picture
{
    /// <summary>The first examination shown, counted from 0.</summary>
    public required int FirstShown { get; init; }

    /// <summary>How many examinations are shown.</summary>
    public required int Shown { get; init; }

    /// <summary>How many examinations the case has.</summary>
    public required int Examinations { get; init; }

    /// <summary>Whether the window can move to earlier examinations.</summary>
    public bool HasEarlier => FirstShown > 0;

    /// <summary>Whether the window can move to later examinations.</summary>
    public bool HasLater => FirstShown + Shown < Examinations;
}
