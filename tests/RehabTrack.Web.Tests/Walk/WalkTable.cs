using System.Net;

namespace RehabTrack.Web.Tests.Walk;

/// <summary>
/// The one table of this walk: every endpoint of the app, and to whom it answers. An endpoint that is in no row fails the walk, so a new one
/// is placed here by who adds it.
/// </summary>
internal static class WalkTable
{
    private static readonly Walker[] Everybody = Enum.GetValues<Walker>();

    private static readonly Walker[] SignedIn = [.. Everybody.Where(walker => walker != Walker.Nobody)];

    private static readonly Walker[] Staff = [Walker.Administrator, Walker.Vet, Walker.Assistant, Walker.Stranger];

    private static readonly Walker[] Leads = [Walker.Administrator, Walker.Vet, Walker.Stranger];

    private static readonly Walker[] Trainer = [Walker.Trainer];

    private static readonly Walker[] Owner = [Walker.Owner];

    private static readonly Walker[] ReferringVet = [Walker.ReferringVet];

    private static readonly Walker[] TrainerAndOwner = [Walker.Trainer, Walker.Owner];

    private static readonly (string, string)[] Day =
    [
        ("command", Guid.NewGuid().ToString()),
        ("date", "2026-01-05"),
        ("from", "2030-01-05"),
    ];

    public static IReadOnlyList<WalkRow> Rows { get; } =
    [
        // What everybody may open.
        Page("/not-found", Everybody),
        Page("/error", Everybody),
        Page("/sign-in", Everybody),
        // They lead to the sign-in, or are not there, for who is not half-way in, has no invitation, and where the first run is over.
        Page("/sign-in/code", []),
        Page("/sign-in/second-step", []),
        Page("/set-up", []),
        Page("/invited", Everybody) with
        {
            Answer = HttpStatusCode.NotFound,
        },
        Page("/account", SignedIn),
        new("GET", "/health/live", Everybody),
        new("GET", "/health/ready", Everybody),
        new("POST", "/sign-out", Everybody) { EndsSession = true },
        new("GET", "/calendar/{secret}/rechecks.ics", Everybody, Subject.Calendar),
        // What trainer, owner and referring vet open.
        Page("/yard", Trainer) with
        {
            BehindLinkOf = Trainer,
        },
        Page("/yard/{Horse:guid}/log", Trainer, Subject.Horse) with
        {
            Form = "log",
            Fields = Day,
            BehindLinkOf = Trainer,
        },
        Page("/yard/{Horse:guid}/away", Trainer, Subject.Horse) with
        {
            Form = "away",
            Fields = Day,
            BehindLinkOf = Trainer,
        },
        Page("/yard/{Horse:guid}/less", Trainer, Subject.Horse) with
        {
            Form = "less",
            Fields = Day,
            BehindLinkOf = Trainer,
        },
        new("POST", "/yard/{horse:guid}/done", Trainer, Subject.Horse)
        {
            Fields = Day,
            RefusesOnTheList = true,
            BehindLinkOf = Trainer,
        },
        new("POST", "/yard/{horse:guid}/checked-none", Trainer, Subject.Horse)
        {
            Fields = Day,
            RefusesOnTheList = true,
            BehindLinkOf = Trainer,
        },
        Page("/progress", Owner) with
        {
            BehindLinkOf = Owner,
        },
        Page("/concern/{Horse:guid}", TrainerAndOwner, Subject.Horse) with
        {
            Form = "concern",
            Fields = [("command", Guid.NewGuid().ToString()), ("words", "warm")],
            BehindLinkOf = TrainerAndOwner,
        },
        Page("/report", ReferringVet) with
        {
            BehindLinkOf = ReferringVet,
        },
        new("GET", "/report/{id:guid}/report.pdf", [.. Staff, .. ReferringVet], Subject.Report) { BehindLinkOf = ReferringVet },
        // A report shows no photo, so its reader has none.
        new("GET", "/horses/{id:guid}/photo", [.. Staff, .. TrainerAndOwner], Subject.Horse) { BehindLinkOf = TrainerAndOwner },
        // What those who work in the practice open.
        Page("/", Staff),
        Page("/horses", Staff),
        Page("/horses/new", Staff),
        Page("/horses/{Id:guid}", Staff, Subject.Horse),
        Page("/horses/{Id:guid}/edit", Staff, Subject.Horse),
        Page("/horses/{Id:guid}/time", Staff, Subject.Horse),
        Page("/horses/{Id:guid}/day", Staff, Subject.Horse),
        Page("/horses/{Id:guid}/plan", Staff, Subject.Horse),
        Page("/horses/{Id:guid}/plan/write", Staff, Subject.Horse),
        Page("/horses/{Id:guid}/decision", Staff, Subject.Horse),
        Page("/horses/{Id:guid}/cases/new", Staff, Subject.Horse),
        new("POST", "/horses/{id:guid}/photo", Staff, Subject.Horse) { Fields = [("remove", "true")], Answer = HttpStatusCode.Redirect },
        Page("/cases/{Id:guid}", Staff, Subject.Case),
        Page("/cases/{Id:guid}/edit", Staff, Subject.Case),
        Page("/cases/{CaseId:guid}/examinations/new", Staff, Subject.Case),
        Page("/cases/{Id:guid}/reports", Staff, Subject.Case),
        Page("/examinations/{Id:guid}", Staff, Subject.Examination),
        Page("/rechecks", Staff),
        Page("/rechecks/settings", Staff),
        Page("/rechecks/{CaseId:guid}/reminder", Staff, Subject.Case),
        new("GET", "/rechecks/{id:guid}/recheck.ics", Staff, Subject.Booking),
        Page("/import", Staff),
        Page("/import/{Id:guid}", Staff, Subject.ImportFile) with
        {
            ReadsLater = true,
        },
        new("POST", "/import/file", Staff) { Answer = HttpStatusCode.Redirect },
        new("GET", "/import/empty.csv", Staff),
        new("GET", "/import/example.csv", Staff),
        new("GET", "/import/{id:guid}/wrong.csv", Staff, Subject.ImportFile),
        Page("/people", Staff),
        Page("/people/new", Staff),
        Page("/people/{Id:guid}", Staff, Subject.Person),
        new("POST", "/people/{id:guid}/data.json", Leads, Subject.Person),
        Page("/yards/new", Staff),
        Page("/yards/{Id:guid}", Staff, Subject.Yard),
        Page("/practice", Staff),
        Page("/practice/rules", Staff),
        Page("/practice/thresholds", Staff),
        Page("/practice/measurement-error", Staff),
        Page("/put-away", Staff),
        Page("/practice/backups", Leads),
        Page("/practice/trail", Leads),
        new("POST", "/practice/trail/trail.csv", Leads),
        Page("/about/use", Staff),
        Page("/about-the-verdict", Staff),
        // The live connection of the pages of the practice. It shows nothing by itself: what it renders was sealed into a page.
        new("*", "/_blazor", SignedIn) { Answer = HttpStatusCode.BadRequest },
        new("*", "/_blazor/negotiate", SignedIn),
        new("*", "/_blazor/disconnect", SignedIn) { Answer = HttpStatusCode.BadRequest },
        new("*", "/_blazor/initializers", SignedIn),
        new("GET", "/_framework/opaque-redirect", SignedIn) { Answer = HttpStatusCode.BadRequest },
    ];

    private static WalkRow Page(string pattern, IReadOnlyList<Walker> allowed, Subject subject = Subject.None) =>
        new("GET", pattern, allowed, subject) { IsPage = true };
}
