using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Referrals;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.Exercise;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Shares;

/// <summary>Reports on a case for a referring vet: what is in them, that they do not change, and who reads them.</summary>
public sealed class ReportTests
{
    [Fact]
    public async Task A_report_tells_what_was_signed_and_stays_as_it_was_released()
    {
        await using ExerciseHouse at = await SignedAsync();
        Actor reader = await ReaderAsync(at, "Anwen Quill");
        Saved released = Value(await ReleaseAsync(at, reader, words: "Good to see the hind limb again."));
        await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today, (16, 0), (18, 0.1), (20, 0)));
        await at.DecideAsync(DecisionKind.Stop);

        ReportContent content = Assert.Single(await ReadAsync(at, reader)).Content;

        Assert.Equal(released.Id, (await ReadAsync(at, reader))[0].Id);
        Assert.Equal(("Thistle Vane", at.House.Vet.Name, ExerciseHouse.Today), (content.HorseName, content.ReleasedBy, content.Date));
        ReportExamination examination = Assert.Single(content.Examinations);
        Assert.Equal(
            (ExerciseHouse.Today.AddDays(-20), at.House.Vet.Name, 3),
            (examination.Date, examination.SignedBy, examination.Readings.Count)
        );
        Assert.Equal(20, examination.WorstPercent!.Value, 6);
        Assert.NotNull(content.Verdict);
        Assert.Equal(DecisionKind.Hold, content.Decision!.Kind);
        Assert.Equal(["walk in hand", "first trot"], content.Plan!.Steps.Select(step => step.Name));
        Assert.Equal("Good to see the hind limb again.", content.Words);
    }

    [Fact]
    public async Task A_case_without_a_signed_examination_has_no_report_and_neither_has_who_does_not_stand_beside_the_horse()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Actor reader = await ReaderAsync(at, "Anwen Quill");
        Actor other = await at.House.PersonAsync("Merle Oake", Role.ReferringVet);

        Assert.Equal("report-without-examination", Code(await ReleaseAsync(at, reader)));
        await at.House.DraftAsync(at.Case, Wishes.Content(ExerciseHouse.Today.AddDays(-9), (18, 0.3)));
        Assert.Equal("report-without-examination", Code(await ReleaseAsync(at, reader)));
        Assert.Equal("not-found", Code(await ReleaseAsync(at, other)));
        Assert.Equal("not-found", Code(await ReleaseAsync(at, at.Owner)));
    }

    [Fact]
    public async Task Only_a_vet_who_signs_for_the_horse_releases_one()
    {
        await using ExerciseHouse at = await SignedAsync();
        Actor reader = await ReaderAsync(at, "Anwen Quill");

        Assert.Equal("not-allowed", Code(await ReleaseAsync(at, reader, who: await at.House.PersonAsync("Pia Thorn", Role.Assistant))));
        Assert.Equal(
            "other-vet-responsible",
            Code(await ReleaseAsync(at, reader, who: await at.House.PersonAsync("Sorrel Dunn", Role.Vet)))
        );
    }

    [Fact]
    public async Task A_link_opens_the_one_report_and_no_other_of_the_same_reader()
    {
        await using ExerciseHouse at = await SignedAsync();
        Actor reader = await ReaderAsync(at, "Anwen Quill", canSignIn: false);
        Saved first = Value(await ReleaseAsync(at, reader, words: "first"));
        Saved second = Value(await ReleaseAsync(at, reader, words: "second"));
        await LinkAsync(at, reader, first.Id, "one");
        await LinkAsync(at, reader, second.Id, "two");

        Actor one = (await DoorAsync(at, "one"))!;
        Actor two = (await DoorAsync(at, "two"))!;

        Assert.Equal(["first"], (await ReadAsync(at, one)).Select(report => report.Content.Words));
        Assert.Equal(["second"], (await ReadAsync(at, two)).Select(report => report.Content.Words));
        Assert.Equal("first", Value(await at.House.Get<GetReport>().ExecuteAsync(one, first.Id)).Content.Words);
        Assert.Equal("not-found", Code(await at.House.Get<GetReport>().ExecuteAsync(one, second.Id)));
        Assert.Equal("not-allowed", Code(await at.House.Get<GetReport>().ExecuteAsync(reader, first.Id)));
        Assert.Equal("not-allowed", Code(await at.House.Get<GetReport>().ExecuteAsync(at.Owner, first.Id)));
        Assert.Equal("second", Value(await at.House.Get<GetReport>().ExecuteAsync(at.House.Vet, second.Id)).Content.Words);
        Assert.Equal("not-allowed", Code(await at.House.Get<GetReports>().ExecuteAsync(reader, NoInput.Value)));
        Assert.Equal("not-allowed", Code(await at.House.Get<GetYard>().ExecuteAsync(one, NoInput.Value)));
        Assert.Equal("not-allowed", Code(await at.House.Get<ListReports>().ExecuteAsync(one, at.Case)));
        Assert.Equal("not-allowed", Code(await at.House.Get<GetCase>().ExecuteAsync(one, at.Case)));
        Assert.Equal("not-allowed", Code(await at.House.Get<GetReports>().ExecuteAsync(at.Owner, NoInput.Value)));
    }

    [Fact]
    public async Task Taken_back_renewed_expired_and_with_the_end_of_the_period_it_opens_nothing()
    {
        await using ExerciseHouse at = await SignedAsync();
        Actor reader = await ReaderAsync(at, "Anwen Quill", canSignIn: false);
        Saved report = Value(await ReleaseAsync(at, reader));
        Saved made = await LinkAsync(at, reader, report.Id, "one");
        Actor open = (await DoorAsync(at, "one"))!;
        await at.House.Get<RevokeShare>().ExecuteAsync(at.House.Vet, new RecordInput(Guid.NewGuid(), made.Id, made.Version));
        Assert.Null(await DoorAsync(at, "one"));
        Assert.Equal("not-allowed", Code(await at.House.Get<GetReports>().ExecuteAsync(open, NoInput.Value)));

        await LinkAsync(at, reader, report.Id, "two");
        await LinkAsync(at, reader, report.Id, "three");
        Assert.Null(await DoorAsync(at, "two"));
        Assert.NotNull(await DoorAsync(at, "three"));
        Assert.NotNull(Assert.Single(await LinesAsync(at), line => line.ReportId == report.Id).Link!.LastSeenAt);

        await ReferringAsync(at, null);
        Assert.Null(await DoorAsync(at, "three"));
        await ReferringAsync(at, reader.PersonId);
        Assert.Null(await DoorAsync(at, "three"));
        Assert.DoesNotContain(await LinesAsync(at), line => line.ReportId is not null);

        Saved later = Value(await ReleaseAsync(at, reader));
        await LinkAsync(at, reader, later.Id, "four");
        at.House.Time.Advance(TimeSpan.FromDays(new ShareSettings().ExpiryDays));
        Assert.Null(await DoorAsync(at, "four"));
    }

    [Fact]
    public async Task A_report_cannot_be_changed_or_taken_out_whoever_writes()
    {
        await using ExerciseHouse at = await SignedAsync();
        Value(await ReleaseAsync(at, await ReaderAsync(at, "Anwen Quill")));

        foreach (string statement in (string[])["UPDATE \"Report\" SET \"ContentJson\" = '{}'", "DELETE FROM \"Report\""])
        {
            await Assert.ThrowsAnyAsync<Exception>(() =>
                at.House.LookAsync(async records => await records.Database.ExecuteSqlRawAsync(statement))
            );
        }
    }

    [Fact]
    public async Task Nothing_said_inside_is_in_it()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Saved started = (
            await at
                .House.Get<StartExamination>()
                .ExecuteAsync(
                    at.House.Vet,
                    new StartExaminationInput
                    {
                        CommandId = Guid.NewGuid(),
                        CaseId = at.Case,
                        FromLast = false,
                    }
                )
        ).Value;
        ExaminationContent content = Wishes.Content(ExerciseHouse.Today.AddDays(-20), (16, 0.1), (18, 0.3), (20, 0));
        SavedDraft draft = (
            await at
                .House.Get<SaveDraft>()
                .ExecuteAsync(
                    at.House.Vet,
                    new SaveDraftInput
                    {
                        CommandId = Guid.NewGuid(),
                        Id = started.Id,
                        Version = started.Version,
                        Content = content with
                        {
                            Note = "INSIDE",
                            Readings =
                            [
                                .. content.Readings.Select(row =>
                                    row with
                                    {
                                        Values = row.Values with { Note = "INSIDE", Measurer = "INSIDE" },
                                    }
                                ),
                            ],
                        },
                    }
                )
        ).Value;
        Value(
            await at
                .House.Get<SignExamination>()
                .ExecuteAsync(at.House.Vet, new SignExaminationInput(Guid.NewGuid(), draft.Id, draft.Version))
        );
        Value(
            await at.SignAsync(
                ExerciseHouse.Plan with
                {
                    Steps = [.. ExerciseHouse.Plan.Steps.Select(step => step with { Note = "INSIDE" })],
                }
            )
        );
        Value(
            await at.DecideAsync(
                DecisionKind.Hold,
                input => input with { Decision = input.Decision with { Reason = "INSIDE" }, Disagreement = "INSIDE" }
            )
        );
        Value(await at.ReportAsync(words: "INSIDE"));
        Actor reader = await ReaderAsync(at, "Anwen Quill");
        Value(await ReleaseAsync(at, reader));

        string kept = await at.House.LookAsync(records => records.Reports.Select(report => report.ContentJson).SingleAsync());

        Assert.Contains("first trot", kept, StringComparison.Ordinal);
        Assert.DoesNotContain("INSIDE", kept, StringComparison.Ordinal);
        Assert.DoesNotContain("Jory Fenn", kept, StringComparison.Ordinal);
        Assert.DoesNotContain("Oona Pell", kept, StringComparison.Ordinal);
    }

    private static async Task<ExerciseHouse> SignedAsync()
    {
        ExerciseHouse at = await ExerciseHouse.BuildAsync();
        await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today.AddDays(-20), (16, 0), (18, 0.3), (20, 0)));
        Value(await at.SignAsync(ExerciseHouse.Plan));
        Value(await at.DecideAsync(DecisionKind.Hold));
        return at;
    }

    private static async Task<Actor> ReaderAsync(ExerciseHouse at, string name, bool canSignIn = true)
    {
        Actor reader = await at.House.PersonAsync(name, Role.ReferringVet, canSignIn);
        await ReferringAsync(at, reader.PersonId);
        return reader;
    }

    private static async Task ReferringAsync(ExerciseHouse at, Guid? person)
    {
        HorseView kept = (await at.House.Get<GetHorse>().ExecuteAsync(at.House.Vet, at.Horse)).Value;
        Value(
            await at
                .House.Get<SaveHorse>()
                .ExecuteAsync(
                    at.House.Vet,
                    new SaveHorseInput
                    {
                        CommandId = Guid.NewGuid(),
                        Id = at.Horse,
                        Version = kept.Version,
                        Name = kept.Name,
                        OwnerId = at.Owner.PersonId,
                        TrainerId = at.Trainer.PersonId,
                        ReferringVetId = person,
                    }
                )
        );
    }

    private static Task<Outcome<Saved>> ReleaseAsync(ExerciseHouse at, Actor reader, string? words = null, Actor? who = null) =>
        at
            .House.Get<ReleaseReport>()
            .ExecuteAsync(who ?? at.House.Vet, new ReleaseReportInput(Guid.NewGuid(), at.Case, reader.PersonId, words));

    private static async Task<IReadOnlyList<ReportView>> ReadAsync(ExerciseHouse at, Actor reader) =>
        (await at.House.Get<GetReports>().ExecuteAsync(reader, NoInput.Value)).Value;

    private static async Task<Saved> LinkAsync(ExerciseHouse at, Actor reader, Guid report, string secret) =>
        Value(
            await at
                .House.Get<RenewShare>()
                .ExecuteAsync(
                    at.House.Vet,
                    new RenewShareInput
                    {
                        CommandId = Guid.NewGuid(),
                        PersonId = reader.PersonId,
                        Relation = HorseRelation.ReferringVet,
                        ReportId = report,
                        SecretHash = HashOf(secret),
                    }
                )
        );

    private static async Task<IReadOnlyList<ShareLine>> LinesAsync(ExerciseHouse at) =>
        (await at.House.Get<ListShares>().ExecuteAsync(at.House.Vet, new ListSharesInput(null, at.Horse))).Value.Lines;

    private static Task<Actor?> DoorAsync(ExerciseHouse at, string secret) => at.House.Get<ShareDoor>().FindAsync(HashOf(secret));

    private static string HashOf(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));

    private static T Value<T>(Outcome<T> outcome)
    {
        Assert.Empty(outcome.Problems);
        return outcome.Value;
    }

    private static string Code<T>(Outcome<T> outcome) => outcome.Problems is [Problem first, ..] ? first.Code : "";
}
