using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.History;

/// <summary>Makes lines of the trail readable: people are told by name, and what changed field by field.</summary>
internal static class ChangeViews
{
    /// <summary>The lines in the order given.</summary>
    /// <param name="records">The database, entered for the practice.</param>
    /// <param name="lines">The lines.</param>
    /// <param name="fieldsOf">The fields of a line.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<IReadOnlyList<ChangeView>> OfAsync(
        RecordsContext records,
        IEnumerable<ChangeRecord> lines,
        Func<ChangeRecord, IReadOnlyList<FieldChange>> fieldsOf,
        CancellationToken cancellation
    )
    {
        (ChangeRecord Line, IReadOnlyList<FieldChange> Fields)[] told = [.. lines.Select(line => (line, fieldsOf(line)))];
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            told.SelectMany(one =>
                one.Fields.SelectMany(field => new[] { PersonOf(field.Before), PersonOf(field.After) }).Append(one.Line.PersonId)
            ),
            cancellation
        );
        return [.. told.Select(one => Of(one.Line, one.Fields, names))];
    }

    private static ChangeView Of(ChangeRecord line, IReadOnlyList<FieldChange> fields, IReadOnlyDictionary<Guid, string> names)
    {
        bool isAccess = line.Kind == AccessLine.Kind;
        return new ChangeView
        {
            Number = line.Number ?? 0,
            At = line.At,
            By = PersonNames.Name(names, line.PersonId) ?? "",
            UseCase = line.UseCase,
            Kind = line.Kind,
            RecordId = line.RecordId,
            IsNew = line.BeforeJson is null,
            Event = isAccess ? AccessLine.EventOf(line.AfterJson) : null,
            IsErased = line.AfterJson.Length == 0,
            Fields =
            [
                .. fields
                    .Where(field => !isAccess || field.Field != AccessLine.EventField)
                    .Select(field =>
                        field with
                        {
                            Before = PersonNames.Name(names, PersonOf(field.Before)) ?? field.Before,
                            After = PersonNames.Name(names, PersonOf(field.After)) ?? field.After,
                        }
                    ),
            ],
        };
    }

    // People are told by name; an id that is nobody's stays as it is.
    private static Guid? PersonOf(string? value) => Guid.TryParseExact(value, "D", out Guid id) ? id : null;
}
