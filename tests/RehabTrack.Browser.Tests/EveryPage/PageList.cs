namespace RehabTrack.Browser.Tests.EveryPage;

/// <summary>
/// Every page a person can open, in the order of the gallery. A page that is added here is checked for access, width and complaints,
/// and gets its pictures.
/// </summary>
public static class PageList
{
    private const string Vet = "Vet";

    public static IReadOnlyList<PageVisit> All { get; } =
    [
        new("sign-in", null, visit => visit.OpenStaticAsync("/sign-in")),
        new("start", Vet, visit => visit.OpenAsync("/")),
        new("account", Vet, visit => visit.OpenStaticAsync("/account")),
        new("rechecks", Vet, DemoPages.OpenBoardAsync),
        new("reminder", Vet, DemoPages.OpenReminderAsync),
        new("recheck-settings", Vet, visit => visit.OpenAsync("/rechecks/settings")),
        new("horses", Vet, visit => visit.OpenAsync("/horses")),
        new("horse", Vet, visit => DemoPages.OpenHorseAsync(visit, "Quillon")),
        new("plan", Vet, visit => DemoPages.OpenBelowHorseAsync(visit, "Tansy Fathom", "/plan")),
        new("plan-write", Vet, visit => DemoPages.OpenBelowHorseAsync(visit, "Tansy Fathom", "/plan/write")),
        new("day", Vet, visit => DemoPages.OpenBelowHorseAsync(visit, "Tansy Fathom", "/day")),
        new("day-lower", Vet, visit => DemoPages.OpenBelowHorseAsync(visit, "Tansy Fathom", "/day?do=lower")),
        new("decision", Vet, visit => DemoPages.OpenBelowHorseAsync(visit, "Tansy Fathom", "/decision")),
        new("time", Vet, visit => DemoPages.OpenBelowHorseAsync(visit, "Tansy Fathom", "/time")),
        new("time-enter", Vet, visit => DemoPages.OpenBelowHorseAsync(visit, "Tansy Fathom", "/time?do=enter")),
        new("horse-new", Vet, visit => visit.OpenAsync("/horses/new")),
        new("horse-edit", Vet, visit => DemoPages.OpenBelowHorseAsync(visit, "Quillon", "/edit")),
        new("case-new", Vet, visit => DemoPages.OpenBelowHorseAsync(visit, "Quillon", "/cases/new")),
        new("case-edit", Vet, DemoPages.OpenCaseEditorAsync),
        new("case", Vet, visit => DemoPages.OpenCaseAsync(visit, "Quillon")),
        new("case-setback", Vet, visit => DemoPages.OpenCaseAsync(visit, "Pepperwick")),
        new("case-why", Vet, DemoPages.OpenGroundAsync),
        new("case-signed-figures", Vet, DemoPages.OpenSignedFiguresAsync),
        new("case-reports", Vet, DemoPages.OpenReportsAsync),
        new("examination-entry", Vet, visit => DemoPages.OpenEntryAsync(visit, "Ironbell")),
        new("import", Vet, visit => visit.OpenAsync("/import")),
        new("import-review", Vet, DemoPages.OpenImportReviewAsync),
        new("people", Vet, visit => visit.OpenAsync("/people")),
        new("person-new", Vet, visit => visit.OpenAsync("/people/new")),
        new("yard-new", Vet, visit => visit.OpenAsync("/yards/new")),
        new("practice", Vet, visit => visit.OpenAsync("/practice")),
        new("rules", Vet, visit => visit.OpenAsync("/practice/rules")),
        new("thresholds", Vet, visit => visit.OpenAsync("/practice/thresholds")),
        new("measurement-error", Vet, visit => visit.OpenAsync("/practice/measurement-error")),
        new("backups", Vet, visit => visit.OpenAsync("/practice/backups")),
        new("about-the-verdict", Vet, visit => visit.OpenAsync("/about-the-verdict")),
        new("about-use", Vet, visit => visit.OpenAsync("/about/use")),
        new("put-away", Vet, DemoPages.OpenPutAwayAsync),
        new("trail", Vet, visit => visit.OpenAsync("/practice/trail")),
        new("yard", "Trainer", visit => visit.OpenStaticAsync("/yard")),
        new("yard-log", "Trainer", visit => DemoPages.OpenFromYardAsync(visit, "/log")),
        new("yard-away", "Trainer", visit => DemoPages.OpenFromYardAsync(visit, "/away")),
        new("yard-less", "Trainer", visit => DemoPages.OpenFromYardAsync(visit, "/less")),
        new("concern", "Trainer", DemoPages.OpenConcernAsync),
        new("progress", "Owner", visit => visit.OpenStaticAsync("/progress")),
        new("link-owner", Vet, visit => DemoPages.OpenLinkAsync(visit, "Jory Fenwater")),
        new("link-trainer", Vet, visit => DemoPages.OpenLinkAsync(visit, "Wilf Arkendale")),
        new("link-referring-vet", Vet, DemoPages.OpenReportLinkAsync),
    ];
}
