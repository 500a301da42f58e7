using MailKit.Net.Smtp;
using MailKit.Security;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using MimeKit;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Horses;
using RehabTrack.Records.People;
using RehabTrack.Records.Reminders;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Reminders;
using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.Features.Reminders;

/// <summary>Against a real SMTP server on loopback.</summary>
public sealed class ReminderMailTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task A_reminder_is_sent_once_however_often_the_same_wish_comes_and_is_recorded()
    {
        await using LoopbackMailServer server = new();
        ReminderMail mail = Mail(server.Port);
        (Guid injury, Guid trainer) = await BookedAsync("Thistle Vane", "wren@yard.example");
        BeginReminderInput wish = new(Guid.CreateVersion7(), injury, trainer, false);

        Outcome<string>[] answers =
        [
            await mail.SendAsync(kept.Vet, wish, default),
            await mail.SendAsync(kept.Vet, wish, default),
            .. await Task.WhenAll(mail.SendAsync(kept.Vet, wish, default), mail.SendAsync(kept.Vet, wish, default)),
        ];

        MimeMessage letter = Assert.Single(server.Taken);
        Assert.All(answers, answer => Assert.Equal("Wren of Thistle Vane", answer.Value));
        Assert.Equal("Wren of Thistle Vane", letter.To.Mailboxes.Single().Name);
        Assert.Equal(
            ("wren@yard.example", "desk@practice.example"),
            (letter.To.Mailboxes.Single().Address, letter.From.Mailboxes.Single().Address)
        );
        Assert.Equal("Thistle Vane: time for the recheck", letter.Subject);
        Assert.Contains("the recheck of Thistle Vane is booked for", letter.TextBody, StringComparison.Ordinal);
        Assert.DoesNotContain("suspensory", letter.TextBody, StringComparison.OrdinalIgnoreCase);
        ReminderView recorded = Assert.Single(await MailedAsync(injury));
        Assert.Equal((ReminderState.Sent, kept.Vet.Name, "wren@yard.example"), (recorded.State, recorded.By, recorded.Mail));
        Assert.StartsWith(recorded.Id.ToString("D"), letter.MessageId, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_address_the_server_refuses_is_told_and_recorded_and_may_be_tried_again()
    {
        await using LoopbackMailServer server = new();
        (Guid injury, Guid trainer) = await BookedAsync("Marram Bay", "wren@refused.example");

        Outcome<string> first = await SendAsync(Mail(server.Port), injury, trainer);
        Outcome<string> second = await SendAsync(Mail(server.Port), injury, trainer);

        Assert.Equal(("mail-refused", "mail-refused"), (Code(first), Code(second)));
        Assert.Empty(server.Taken);
        Assert.All(
            await MailedAsync(injury),
            mailed => Assert.Equal((ReminderState.Refused, "mail-refused"), (mailed.State, mailed.Trouble))
        );
    }

    [Fact]
    public async Task A_server_that_does_not_answer_is_told_with_its_name_and_port()
    {
        int port = LoopbackMailServer.FreePort();
        (Guid injury, Guid trainer) = await BookedAsync("Fenland Reed", "wren@yard.example");

        Outcome<string> outcome = await SendAsync(Mail(port), injury, trainer);

        Assert.Equal("mail-unreachable", Code(outcome));
        Assert.Equal(["127.0.0.1", port.ToString(System.Globalization.CultureInfo.InvariantCulture)], outcome.Problems[0].Arguments);
        Assert.Equal(ReminderState.Refused, Assert.Single(await MailedAsync(injury)).State);
    }

    [Fact]
    public async Task A_server_that_cannot_seal_the_way_gets_nothing_when_sealing_is_asked_for()
    {
        await using LoopbackMailServer server = new();
        (Guid injury, Guid trainer) = await BookedAsync("Sedge Warren", "wren@yard.example");

        Outcome<string> outcome = await SendAsync(
            Mail(
                new MailSettings
                {
                    Host = "127.0.0.1",
                    Port = server.Port,
                    From = "desk@practice.example",
                }
            ),
            injury,
            trainer
        );

        Assert.Equal("mail-unreachable", Code(outcome));
        Assert.Empty(server.Taken);
    }

    /// <summary>OWASP ASVS 5.0, 12.3.2 (from memory).</summary>
    [Fact]
    public async Task A_server_whose_certificate_nobody_vouches_for_gets_nothing()
    {
        await using LoopbackMailServer server = new(seals: true);
        (Guid injury, Guid trainer) = await BookedAsync("Tansy Warren", "wren@yard.example");

        Outcome<string> outcome = await SendAsync(
            Mail(
                new MailSettings
                {
                    Host = "127.0.0.1",
                    Port = server.Port,
                    From = "desk@practice.example",
                }
            ),
            injury,
            trainer
        );

        Assert.Equal("mail-unreachable", Code(outcome));
        Assert.Empty(server.Taken);
        // It does seal the way for whoever does not look.
        using SmtpClient careless = new() { ServerCertificateValidationCallback = (_, _, _, _) => true };
        await careless.ConnectAsync("127.0.0.1", server.Port, SecureSocketOptions.StartTls);
        Assert.True(careless.IsSecure);
    }

    [Theory]
    [InlineData("correct", "")]
    [InlineData("wrong", "mail-sign-in-refused")]
    public async Task Name_and_password_are_given_where_they_are_set_up(string password, string code)
    {
        await using LoopbackMailServer server = new(asksPassword: true);
        (Guid injury, Guid trainer) = await BookedAsync($"Bracken {password}", "wren@yard.example");

        Outcome<string> outcome = await SendAsync(
            Mail(Unsealed(server.Port) with { User = "practice", Password = password }),
            injury,
            trainer
        );

        Assert.Equal(code, Code(outcome));
        Assert.Equal(code.Length == 0 ? 1 : 0, server.Taken.Count);
    }

    [Fact]
    public async Task Nothing_is_sent_for_a_closed_case()
    {
        await using LoopbackMailServer server = new();
        (Guid injury, Guid trainer) = await BookedAsync("Low Bracken", "wren@yard.example");
        CaseView view = (await kept.Services.GetRequiredService<GetCase>().ExecuteAsync(kept.Vet, injury)).Value;
        await kept
            .Services.GetRequiredService<CloseCase>()
            .ExecuteAsync(
                kept.Vet,
                new CloseCaseInput
                {
                    CommandId = Guid.CreateVersion7(),
                    CaseId = injury,
                    Version = view.Version,
                    End = CaseEnd.Died,
                    On = new DateOnly(2026, 11, 25),
                    Outcome = "Colic, not the limb",
                }
            );

        Assert.Equal("case-closed", Code(await SendAsync(Mail(server.Port), injury, trainer)));
        Assert.Empty(server.Taken);
    }

    [Fact]
    public async Task Without_a_server_or_over_an_open_way_to_another_machine_nothing_is_begun()
    {
        (Guid injury, Guid trainer) = await BookedAsync("Vane Thistle", "wren@yard.example");

        Assert.Equal("mail-not-configured", Code(await SendAsync(Mail(new MailSettings()), injury, trainer)));
        Assert.Equal("mail-not-secure", Code(await SendAsync(Mail(Unsealed(25) with { Host = "mail.practice.example" }), injury, trainer)));
        Assert.Empty(await MailedAsync(injury));
    }

    [Fact]
    public void Settings_come_from_the_configuration_and_the_password_is_never_written()
    {
        MailSettings settings = MailSettings.Read(
            new ConfigurationBuilder()
                .AddInMemoryCollection(
                    new Dictionary<string, string?>(StringComparer.Ordinal)
                    {
                        ["Mail:Host"] = "mail.practice.example",
                        ["Mail:Security"] = "Tls",
                        ["Mail:Port"] = "465",
                        ["Mail:Password"] = "long secret",
                        ["Mail:From"] = "Desk <desk@practice.example>",
                    }
                )
                .Build()
        );

        Assert.Equal((true, true, MailSecurity.Tls, 465), (settings.IsSetUp, settings.IsSafe, settings.Security, settings.Port));
        Assert.DoesNotContain("long secret", settings.ToString(), StringComparison.Ordinal);
        Assert.False((settings with { From = null }).IsSetUp);
    }

    private static string Code(Outcome<string> outcome) => outcome.Succeeded ? "" : Assert.Single(outcome.Problems).Code;

    private static MailSettings Unsealed(int port) =>
        new()
        {
            Host = "127.0.0.1",
            Port = port,
            Security = MailSecurity.None,
            From = "desk@practice.example",
        };

    private ReminderMail Mail(int port) => Mail(Unsealed(port));

    private ReminderMail Mail(MailSettings settings) =>
        new(
            new MailSender(settings, kept.Services.GetRequiredService<TimeProvider>()),
            kept.Services.GetRequiredService<GetReminder>(),
            kept.Services.GetRequiredService<BeginReminder>(),
            kept.Services.GetRequiredService<SettleReminder>(),
            kept.Services.GetRequiredService<TimeProvider>()
        );

    private Task<Outcome<string>> SendAsync(ReminderMail mail, Guid injury, Guid person) =>
        mail.SendAsync(kept.Vet, new BeginReminderInput(Guid.CreateVersion7(), injury, person, false), default);

    private async Task<IReadOnlyList<ReminderView>> MailedAsync(Guid injury) =>
        (await kept.Services.GetRequiredService<GetReminder>().ExecuteAsync(kept.Vet, injury)).Value.Mailed;

    private async Task<(Guid Case, Guid Trainer)> BookedAsync(string horseName, string mail)
    {
        Guid trainer = (
            await kept
                .Services.GetRequiredService<SavePerson>()
                .ExecuteAsync(
                    kept.Vet,
                    new SavePersonInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        Name = $"Wren of {horseName}",
                        Role = Role.Trainer,
                        Mail = mail,
                    }
                )
        ).Value.Id;
        Guid horse = (
            await kept
                .Services.GetRequiredService<SaveHorse>()
                .ExecuteAsync(
                    kept.Vet,
                    new SaveHorseInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        Name = horseName,
                        TrainerId = trainer,
                    }
                )
        ).Value.Id;
        Guid injury = (
            await kept
                .Services.GetRequiredService<OpenCase>()
                .ExecuteAsync(
                    kept.Vet,
                    new OpenCaseInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        HorseId = horse,
                        Limb = Limb.LeftHind,
                        Structure = Structure.SuspensoryLigament,
                    }
                )
        ).Value.Id;
        await kept
            .Services.GetRequiredService<BookRecheck>()
            .ExecuteAsync(
                kept.Vet,
                new BookRecheckInput(Guid.CreateVersion7(), injury, new BookingPlan { Date = new DateOnly(2026, 12, 10) })
            );
        return (injury, trainer);
    }
}
