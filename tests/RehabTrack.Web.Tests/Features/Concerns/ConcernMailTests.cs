using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using MimeKit;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Concerns;
using RehabTrack.Web.Features.Reminders;
using RehabTrack.Web.Jobs;
using RehabTrack.Web.Tests.Features.Reminders;
using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.Features.Concerns;

/// <summary>A concern is written to the vets, against a real SMTP server on loopback.</summary>
public sealed class ConcernMailTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    private ConcernMail Mail(int? port) =>
        new(
            new MailSender(
                new MailSettings
                {
                    Host = port is null ? null : "127.0.0.1",
                    Port = port ?? 0,
                    Security = MailSecurity.None,
                    From = "desk@practice.example",
                },
                kept.Services.GetRequiredService<TimeProvider>()
            ),
            kept.Services.GetRequiredService<GetConcernLetter>()
        );

    private Task VetAsync(string name, string mail) =>
        kept
            .Services.GetRequiredService<SavePerson>()
            .ExecuteAsync(
                kept.Vet,
                new SavePersonInput
                {
                    CommandId = Guid.NewGuid(),
                    Name = name,
                    Role = Role.Vet,
                    Mail = mail,
                }
            );

    [Fact]
    public async Task The_vets_read_horse_words_and_who_and_when_and_nothing_of_the_injury()
    {
        await using LoopbackMailServer server = new();
        await VetAsync("Runa Tolland", "runa@practice.example");
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Thistle Vane");
        Outcome<LogAnswer> concern = await horse.ConcernAsync("warm, left hind");

        Assert.Empty(await Mail(server.Port).SendAsync(horse.Trainer, concern.Value.Id, 1, default));

        MimeMessage letter = server.Taken.Single(taken => taken.To.Mailboxes.Single().Address == "runa@practice.example");
        Assert.Equal("Thistle Vane: a concern was reported", letter.Subject);
        Assert.Contains("Warm, left hind", letter.TextBody, StringComparison.Ordinal);
        Assert.Contains($"Reported by {horse.Trainer.Name}", letter.TextBody, StringComparison.Ordinal);
        Assert.DoesNotContain("suspensory", letter.TextBody, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task What_went_wrong_is_kept_for_the_start_page_until_a_letter_goes()
    {
        await VetAsync("Ansel Roke", "ansel@practice.example");
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Marram Bay");
        Guid concern = (await horse.ConcernAsync("short behind")).Value.Id;
        ConcernMail unreachable = Mail(LoopbackMailServer.FreePort());

        Assert.All(
            await unreachable.SendAsync(horse.Trainer, concern, 1, default),
            trouble => Assert.Equal("mail-unreachable", trouble.Code)
        );
        Assert.NotEmpty(unreachable.LastTrouble);
        Assert.Empty(await Mail(null).SendAsync(horse.Trainer, concern, 1, default));
    }

    [Fact]
    public async Task The_bell_rings_once_for_a_concern_however_often_its_form_is_tapped_and_never_for_a_log_without_sign()
    {
        await using LoopbackMailServer server = new();
        await VetAsync("Sorrel Dunn", "sorrel@practice.example");
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Fenland Reed");
        Outcome<LogAnswer> concern = await horse.ConcernAsync("warm");
        ConcernBell bell = new();
        bell.Ring(horse.Trainer, horse.Id, concern);
        bell.Ring(horse.Trainer, horse.Id, concern);
        bell.Ring(horse.Trainer, horse.Id, new LogAnswer(Guid.NewGuid(), false));
        Assert.Equal(1, bell.Rung.Count);

        using ConcernMailJob job = new(bell, Mail(server.Port), TimeProvider.System, NullLogger<ConcernMailJob>.Instance);
        await job.StartAsync(default);
        await server.FirstTaken.WaitAsync(TimeSpan.FromSeconds(60));
        await job.StopAsync(default);
    }

    [Fact]
    public async Task A_flood_of_concerns_of_one_horse_makes_one_letter_at_once_and_one_that_tells_how_many_followed()
    {
        await using LoopbackMailServer server = new();
        await VetAsync("Tamsin Reeve", "tamsin@practice.example");
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Bracken Moor");
        FakeTimeProvider time = new(DateTimeOffset.UnixEpoch);
        ConcernBell bell = new();
        for (int number = 1; number <= 5; number++)
        {
            bell.Ring(horse.Trainer, horse.Id, await horse.ConcernAsync($"warm, number {number}"));
        }

        using ConcernMailJob job = new(bell, Mail(server.Port), time, NullLogger<ConcernMailJob>.Instance);
        await job.StartAsync(default);
        await server.FirstTaken.WaitAsync(TimeSpan.FromSeconds(60));
        MimeMessage[] letters = await ToAsync(server, "tamsin@practice.example", 1, time, TimeSpan.Zero);
        Assert.Contains("number 1", Assert.Single(letters).TextBody, StringComparison.Ordinal);

        letters = await ToAsync(server, "tamsin@practice.example", 2, time, TimeSpan.FromMinutes(16));
        await job.StopAsync(default);

        Assert.Equal(2, letters.Length);
        Assert.Contains("since the last letter: 4", letters[1].TextBody, StringComparison.Ordinal);
        Assert.Contains("number 5", letters[1].TextBody, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_waits_for_its_letter_when_the_server_ends_gets_it_then()
    {
        await using LoopbackMailServer server = new();
        await VetAsync("Merle Ashdown", "merle@practice.example");
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Sedge Water");
        FakeTimeProvider time = new(DateTimeOffset.UnixEpoch);
        ConcernBell bell = new();
        using ConcernMailJob job = new(bell, Mail(server.Port), time, NullLogger<ConcernMailJob>.Instance);
        await job.StartAsync(default);
        bell.Ring(horse.Trainer, horse.Id, await horse.ConcernAsync("warm, number 1"));
        await ToAsync(server, "merle@practice.example", 1, time, TimeSpan.Zero);
        bell.Ring(horse.Trainer, horse.Id, await horse.ConcernAsync("warm, number 2"));
        bell.Ring(horse.Trainer, horse.Id, await horse.ConcernAsync("warm, number 3"));
        while (bell.Rung.Count > 0)
        {
            await Task.Yield();
        }

        await job.StopAsync(default);

        MimeMessage[] letters = await ToAsync(server, "merle@practice.example", 2, time, TimeSpan.Zero);
        Assert.Equal(2, letters.Length);
        Assert.Contains("since the last letter: 2", letters[1].TextBody, StringComparison.Ordinal);
    }

    /// <summary>Lets time pass, again and again, until somebody has so many letters.</summary>
    private static async Task<MimeMessage[]> ToAsync(
        LoopbackMailServer server,
        string mail,
        int count,
        FakeTimeProvider time,
        TimeSpan step
    )
    {
        MimeMessage[] taken = [];
        for (int look = 0; look < 600 && taken.Length < count; look++)
        {
            time.Advance(step);
            await Task.Delay(50);
            taken = [.. server.Taken.Where(letter => letter.To.Mailboxes.Single().Address == mail)];
        }

        return taken;
    }
}
