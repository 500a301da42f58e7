using System.Net;

namespace RehabTrack.Web.Tests.Walk;

/// <summary>What one endpoint answers to whom.</summary>
/// <param name="Method">The method, "*" for any; "GET" of a page stands for its form, too.</param>
/// <param name="Pattern">The pattern of its address.</param>
/// <param name="Allowed">Who is let in.</param>
/// <param name="Subject">What the id in the address names.</param>
internal sealed record WalkRow(string Method, string Pattern, IReadOnlyList<Walker> Allowed, Subject Subject = Subject.None)
{
    /// <summary>What who is let in is answered with.</summary>
    public HttpStatusCode Answer { get; init; } = HttpStatusCode.OK;

    /// <summary>Whether it is a page, which takes forms at the same address.</summary>
    public bool IsPage { get; init; }

    /// <summary>The form that its page takes, by its name; null for a page without one, and for one with a live connection.</summary>
    public string? Form { get; init; }

    /// <summary>The fields that a form needs so that nothing but the id can be wrong.</summary>
    public IReadOnlyList<(string Name, string Value)> Fields { get; init; } = [];

    /// <summary>Whether it goes back to the list and says there that the record is not there.</summary>
    public bool RefusesOnTheList { get; init; }

    /// <summary>Whether its page reads the record over the live connection only: what comes before is the same for every id.</summary>
    public bool ReadsLater { get; init; }

    /// <summary>Which share links open it, by the role of their person.</summary>
    public IReadOnlyList<Walker> BehindLinkOf { get; init; } = [];

    /// <summary>Whether a walk without a token would end the walker's session; it is asked without one only.</summary>
    public bool EndsSession { get; init; }

    public override string ToString() => $"{Method} {Pattern}";
}
