using RehabTrack.Rechecks.Linking;
using RehabTrack.Records.Cases;

namespace RehabTrack.Web.Features.Cases;

/// <summary>Words on links that stand and still do not count: an amended examination may have taken the ground from under them.</summary>
public static class UnusedWords
{
    /// <summary>Why a word is not used; null when it is, or was taken back.</summary>
    /// <param name="word">The word.</param>
    /// <param name="links">The links that are shown; null when there are none.</param>
    public static LeftOutReason? ReasonOf(LinkWordView word, LinkedCourse? links)
    {
        ArgumentNullException.ThrowIfNull(word);
        if (word.WithdrawnAt is not null)
        {
            return null;
        }

        if (!word.Applies)
        {
            return LeftOutReason.PlaceNotFound;
        }

        // On an earlier day the later place is not there yet: that is no fault of the word.
        return links
            ?.LeftOut.FirstOrDefault(left => left.Constraint == word.Constraint && left.Reason != LeftOutReason.PlaceNotFound)
            ?.Reason;
    }
}
