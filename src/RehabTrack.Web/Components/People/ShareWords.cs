using RehabTrack.Records.Horses;
using RehabTrack.Records.Shares;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.People;

/// <summary>What is said of share links.</summary>
public static class ShareWords
{
    /// <summary>Whose link it is and what it opens.</summary>
    public static string Who(ShareLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        string horses = string.Join(", ", line.HorseNames);
        return line.Relation switch
        {
            HorseRelation.Trainer when line.YardName is { } yard => Say(ShareTexts.TrainerYardLine, line.PersonName, yard, horses),
            HorseRelation.Trainer => Say(ShareTexts.TrainerLine, line.PersonName, horses),
            HorseRelation.ReferringVet => Say(ShareTexts.ReportLine, line.PersonName, horses, Figures.Date(line.ReportDate)),
            HorseRelation.Owner => Say(ShareTexts.OwnerLine, line.PersonName, horses),
        };
    }

    /// <summary>The same, behind the name of a button.</summary>
    public static string For(ShareLine line) => Say(ShareTexts.For, Who(line));

    /// <summary>How a link stands: made, expired, opened.</summary>
    /// <param name="link">The link; null when there is none.</param>
    /// <param name="timeZone">The practice's time zone.</param>
    public static IEnumerable<string> Standing(ShareLinkView? link, string timeZone)
    {
        if (link is null)
        {
            return [ShareTexts.NoLink];
        }

        string until = Moments.Of(link.ExpiresAt, timeZone);
        return
        [
            link.IsExpired ? Say(ShareTexts.Expired, until) : Say(ShareTexts.Made, link.MadeBy, Moments.Of(link.MadeAt, timeZone), until),
            link.LastSeenAt is { } seen ? Say(ShareTexts.Seen, Moments.Of(seen, timeZone)) : ShareTexts.NotSeen,
        ];
    }

    /// <summary>The heading of the sheet that is printed.</summary>
    public static string PaperTitle(ShareLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        string horses = string.Join(", ", line.HorseNames);
        return line.Relation switch
        {
            HorseRelation.Trainer when line.YardName is { } yard => Say(ShareTexts.PaperTrainerYard, yard),
            HorseRelation.Trainer => ShareTexts.PaperTrainer,
            HorseRelation.ReferringVet => Say(ShareTexts.PaperReport, horses, Figures.Date(line.ReportDate)),
            HorseRelation.Owner => Say(ShareTexts.PaperOwner, horses),
        };
    }

    private static string Say(string text, params object[] values) => string.Format(TextCulture.Default, text, values);
}
