using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.History;

/// <summary>Reads who changed what of a case, latest first; the latest five hundred lines.</summary>
public sealed class GetChanges(RecordsAccess access) : UseCase<Guid, IReadOnlyList<ChangeView>>(access)
{
    private const int MostLines = 500;

    private protected override Right Right => Right.SeeHistory;

    private protected override async Task<Outcome<IReadOnlyList<ChangeView>>> RunAsync(
        RecordsSession session,
        Guid input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        if (!await records.Cases.AnyAsync(injury => injury.Id == input, cancellation))
        {
            return RecordProblems.NotFound("case");
        }

        var lines = await (
            from change in records.Changes.AsNoTracking()
            join who in records.People on change.PersonId equals who.Id into people
            from person in people.DefaultIfEmpty()
            where change.CaseId == input
            orderby change.At descending, change.Id descending
            select new { Change = change, Name = person == null ? "" : person.Name }
        )
            .Take(MostLines)
            .ToArrayAsync(cancellation);
        ChangeView[] views =
        [
            .. lines.Select(line => new ChangeView
            {
                At = line.Change.At,
                By = line.Name,
                UseCase = line.Change.UseCase,
                Kind = line.Change.Kind,
                RecordId = line.Change.RecordId,
                IsNew = line.Change.BeforeJson is null,
                Fields = ChangeFields.Of(line.Change.BeforeJson, line.Change.AfterJson),
            }),
        ];
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            views.SelectMany(view => view.Fields).SelectMany(field => new[] { PersonOf(field.Before), PersonOf(field.After) }),
            cancellation
        );
        return Outcome<IReadOnlyList<ChangeView>>.Of(
            [
                .. views.Select(view =>
                    view with
                    {
                        Fields =
                        [
                            .. view.Fields.Select(field =>
                                field with
                                {
                                    Before = PersonNames.Name(names, PersonOf(field.Before)) ?? field.Before,
                                    After = PersonNames.Name(names, PersonOf(field.After)) ?? field.After,
                                }
                            ),
                        ],
                    }
                ),
            ],
            []
        );
    }

    // People are told by name; an id that is nobody's stays as it is.
    private static Guid? PersonOf(string? value) => Guid.TryParseExact(value, "D", out Guid id) ? id : null;
}
