using System.Globalization;
using System.Text;
using Microsoft.Playwright;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>A sheet as a vet would keep it: one injury that halved in six months, with dates that end ten weeks ago.</summary>
internal static class OwnSheet
{
    public const string Horse = "Thistledown";

    private const string FileName = "thistledown.csv";

    /// <summary>The levels of every examination, proximal to distal, with the lesion's share at the first.</summary>
    private static readonly (double Level, double Lesion)[] Levels = [(12, 0), (14, 0.2), (16, 0.4), (18, 0.2), (20, 0)];

    public static int LevelCount => Levels.Length;

    public static FilePayload File() => Payload(Text());

    public static FilePayload WithOneWrongLine() =>
        Payload(Text() + $"{Horse} LH,{Horse},LH,suspensory-ligament,body,,2026-01-05,RV,16,1.1,1.4\n");

    private static FilePayload Payload(string text) =>
        new()
        {
            Name = FileName,
            MimeType = "text/csv",
            Buffer = Encoding.UTF8.GetBytes(text),
        };

    private static string Text()
    {
        DateOnly today = DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime);
        StringBuilder sheet = new();
        sheet.Append("case,horse,limb,structure,part,onset_date,examination_date,measurer,level_cm,ligament_area_cm2,lesion_area_cm2\n");
        foreach ((int daysAgo, double size) in (IEnumerable<(int, double)>)[(250, 1), (190, 0.7), (130, 0.5), (70, 0.35)])
        {
            foreach ((double level, double lesion) in Levels)
            {
                sheet.Append(
                    CultureInfo.InvariantCulture,
                    $"{Horse} LH,{Horse},LH,suspensory-ligament,body,{today.AddDays(-300):yyyy-MM-dd},{today.AddDays(-daysAgo):yyyy-MM-dd},RV,{level},1.25,{lesion * size:0.00}\n"
                );
            }
        }

        return sheet.ToString();
    }

    /// <summary>What the recheck finds: ligament and lesion area of each level, half as large again as at the start.</summary>
    public static IEnumerable<(string Ligament, string Lesion)> Recheck =>
        Levels.Select(level => ("1,3", (1.5 * level.Lesion).ToString("0.##", CultureInfo.GetCultureInfo("de-DE"))));
}
