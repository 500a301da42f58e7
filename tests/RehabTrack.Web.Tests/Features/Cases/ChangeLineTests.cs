using RehabTrack.Records.History;
using RehabTrack.Web.Features.Cases;

namespace RehabTrack.Web.Tests.Features.Cases;

public sealed class ChangeLineTests
{
    private static readonly Guid Record = Guid.NewGuid();

    private static ChangeView Change(string useCase, string by, int minute, string? before, string? after) =>
        new()
        {
            Number = 1,
            At = new DateTime(2026, 9, 8, 12, minute, 0, DateTimeKind.Utc),
            By = by,
            UseCase = useCase,
            Kind = "Examination",
            RecordId = Record,
            IsNew = before is null,
            Fields = [new FieldChange("readings[Body 24].lesionAreaCm2", before, after)],
        };

    [Fact]
    public void A_change_says_what_who_and_each_field_before_and_after()
    {
        ChangeLine line = Assert.Single(ChangeLine.Of([Change("AmendExamination", "Ada", 1, "0.3", "0.4")]));

        Assert.Equal(("Examination amended", "Ada"), (line.What, line.By));
        Assert.Equal("Body 24 cm, lesion area: 0.3 becomes 0.4", Assert.Single(line.Fields));
    }

    [Fact]
    public void Savings_of_one_draft_by_one_person_are_one_line_from_first_to_last()
    {
        IReadOnlyList<ChangeLine> lines = ChangeLine.Of([
            Change("SignExamination", "Ada", 9, null, null),
            Change("SaveDraft", "Ada", 3, "0.5", "0.4"),
            Change("SaveDraft", "Ada", 2, "0.3", "0.5"),
            Change("SaveDraft", "Ben", 1, null, "0.3"),
        ]);

        Assert.Equal(["Examination signed", "Draft saved", "Draft saved"], lines.Select(line => line.What));
        Assert.Equal("Body 24 cm, lesion area: 0.3 becomes 0.4", Assert.Single(lines[1].Fields));
        Assert.Equal("Ben", lines[2].By);
        Assert.Empty(lines[0].Fields);
    }

    [Fact]
    public void Bookings_calls_and_reminders_are_told_in_words_without_what_the_line_says_already()
    {
        static string[] Told(string useCase, string kind, params FieldChange[] fields)
        {
            ChangeLine line = Assert.Single(
                ChangeLine.Of([Change(useCase, "Ada", 1, null, null) with { Kind = kind, IsNew = true, Fields = fields }])
            );
            return [line.What, .. line.Fields];
        }

        Assert.Equal(
            ["Recheck booked", "place: nothing becomes Long Acre"],
            Told("BookRecheck", "Booking", new FieldChange("place", null, "Long Acre"), new FieldChange("bookedAt", null, "2026-11-24"))
        );
        Assert.Equal(
            ["Call noted", "outcome: nothing becomes Message left"],
            Told("NoteCall", "Call", new FieldChange("outcome", null, "LeftMessage"), new FieldChange("caseId", null, "x"))
        );
        Assert.Equal(
            ["What became of a reminder kept", "state: asked of the mail server becomes taken by the mail server"],
            Told("SettleReminder", "Reminder", new FieldChange("state", "Begun", "Sent"))
        );
    }

    [Fact]
    public void What_has_no_words_of_its_own_is_still_told() =>
        Assert.Equal("Examination changed", Assert.Single(ChangeLine.Of([Change("SomethingNew", "Ada", 1, "a", "b")])).What);
}
