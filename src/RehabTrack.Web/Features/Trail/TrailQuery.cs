using System.Globalization;
using RehabTrack.Records.History;
using RehabTrack.Web.Components.Forms;

namespace RehabTrack.Web.Features.Trail;

/// <summary>Which lines of the trail are looked at, as it stands in the address and in the form that takes them out.</summary>
public static class TrailQuery
{
    /// <summary>Reads a query; what cannot be read is left out.</summary>
    /// <param name="find">Yields the text of a parameter, or null.</param>
    public static TrailFilter Parse(Func<string, string?> find)
    {
        ArgumentNullException.ThrowIfNull(find);
        return new TrailFilter
        {
            PersonId = Guid.TryParse(find("person"), out Guid person) ? person : null,
            Kind = find("kind") is { Length: > 0 } kind ? kind : null,
            CaseId = Guid.TryParse(find("case"), out Guid caseId) ? caseId : null,
            From = DayText.Read(find("from")),
            To = DayText.Read(find("to")),
            Before = long.TryParse(find("before"), NumberStyles.None, CultureInfo.InvariantCulture, out long before) ? before : null,
        };
    }

    /// <summary>The parameters of a filter that are set, without the page.</summary>
    public static IEnumerable<KeyValuePair<string, string>> Of(TrailFilter filter)
    {
        ArgumentNullException.ThrowIfNull(filter);
        (string Name, string? Value)[] parameters =
        [
            ("person", filter.PersonId?.ToString("D")),
            ("kind", filter.Kind),
            ("case", filter.CaseId?.ToString("D")),
            ("from", DayText.Of(filter.From)),
            ("to", DayText.Of(filter.To)),
        ];
        return parameters.Where(one => !string.IsNullOrEmpty(one.Value)).Select(one => KeyValuePair.Create(one.Name, one.Value!));
    }

    /// <summary>The address of a filter, on its page.</summary>
    public static string AddressOf(TrailFilter filter)
    {
        ArgumentNullException.ThrowIfNull(filter);
        IEnumerable<KeyValuePair<string, string>> parameters = Of(filter);
        if (filter.Before is { } before)
        {
            parameters = parameters.Append(KeyValuePair.Create("before", before.ToString(CultureInfo.InvariantCulture)));
        }

        string query = string.Join('&', parameters.Select(one => $"{one.Key}={Uri.EscapeDataString(one.Value)}"));
        return query.Length == 0 ? "/practice/trail" : $"/practice/trail?{query}";
    }
}
