using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>What differs between two worksheets of one examination, in words.</summary>
public static class WorksheetChanges
{
    /// <summary>One line a field that differs: the place, the field, what it said and what it says.</summary>
    public static IEnumerable<string> Between(Worksheet before, Worksheet after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        foreach (HeaderField field in Enum.GetValues<HeaderField>())
        {
            if (before[field] != after[field])
            {
                yield return Text(ExaminationPage.AmendField, EntryTexts.NameOf(field), Shown(before[field]), Shown(after[field]));
            }
        }

        foreach (EntryRow row in after.Grid.Rows)
        {
            if (before.Grid.Find(row.Key) is not { } was)
            {
                if (row.IsRead)
                {
                    yield return Text(ExaminationPage.AmendRowNew, PlaceOf(row, after));
                }

                continue;
            }

            if (row.NotRead && !was.NotRead)
            {
                yield return Text(ExaminationPage.AmendRowGone, PlaceOf(was, before));
                continue;
            }

            foreach (EntryColumn column in EntryColumns.All.Where(column => was[column] != row[column]))
            {
                yield return Text(
                    ExaminationPage.AmendCell,
                    PlaceOf(was, before),
                    EntryTexts.NameOf(column),
                    Shown(was[column]),
                    Shown(row[column])
                );
            }
        }

        foreach (EntryRow row in before.Grid.Rows.Where(row => after.Grid.Find(row.Key) is null))
        {
            yield return Text(ExaminationPage.AmendRowGone, PlaceOf(row, before));
        }
    }

    private static string PlaceOf(EntryRow row, Worksheet sheet) =>
        Names.AsTitle(EntryTexts.PlaceOf(row, WorksheetReader.ZonesOf(sheet) is not null));

    private static string Shown(string text) => text.Length == 0 ? FormTexts.ConflictBlank : text;

    private static string Text(string pattern, params object[] arguments) => string.Format(TextCulture.Default, pattern, arguments);
}
