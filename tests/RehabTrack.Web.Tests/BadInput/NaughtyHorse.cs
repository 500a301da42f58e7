using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Web.Tests.Shared;

namespace RehabTrack.Web.Tests.BadInput;

/// <summary>A horse of which every word that the records take is one and the same text, and the pages that show it.</summary>
internal static class NaughtyHorse
{
    /// <summary>Makes it.</summary>
    /// <returns>The pages by what they are, each with its address for this horse.</returns>
    public static async Task<IReadOnlyList<(string Page, string Address)>> PagesAsync(RunningApp app, ShareHouse house, string text)
    {
        DateOnly today = await house.TodayAsync();
        // What steers a terminal is no word and is refused: the records say so elsewhere.
        string words = string.Concat(text.Where(letter => !char.IsControl(letter)));
        Guid yard = (
            await house.AskAsync<SaveYard, SaveYardInput, Saved>(new SaveYardInput { CommandId = Guid.NewGuid(), Name = words })
        ).Id;
        Guid owner = await house.PersonAsync(words, Role.Owner);
        Guid trainer = await house.PersonAsync(words, Role.Trainer);
        Guid referring = await house.PersonAsync(words, Role.ReferringVet);
        Guid horse = await house.HorseAsync(words, owner, trainer, referring);
        HorseView kept = await house.AskAsync<GetHorse, Guid, HorseView>(horse);
        await house.AskAsync<SaveHorse, SaveHorseInput, Saved>(
            new SaveHorseInput
            {
                CommandId = Guid.NewGuid(),
                Id = horse,
                Version = kept.Version,
                Name = words,
                Markings = words,
                Use = words,
                YardId = yard,
                OwnerId = owner,
                TrainerId = trainer,
                ReferringVetId = referring,
            }
        );
        Guid injury = await house.SignedCaseAsync(horse, note: words);
        CaseView view = await house.AskAsync<GetCase, Guid, CaseView>(injury);
        await house.AskAsync<BookRecheck, BookRecheckInput, Saved>(
            new BookRecheckInput(Guid.NewGuid(), injury, new BookingPlan { Date = today.AddDays(9), Place = words })
        );
        await house.AskAsync<NoteCall, NoteCallInput, Saved>(new NoteCallInput(Guid.NewGuid(), injury, default, owner, words));
        await app.Services.GetRequiredService<ReportConcern>().ExecuteAsync(app.Vet, new ReportConcernInput(Guid.NewGuid(), horse, words));
        await house.ReleaseAsync(injury, referring, words);
        return
        [
            ("start", "/"),
            ("horses", $"/horses?q={Uri.EscapeDataString(words)}"),
            ("horse", $"/horses/{horse}"),
            ("horse editor", $"/horses/{horse}/edit"),
            ("time", $"/horses/{horse}/time"),
            ("day", $"/horses/{horse}/day"),
            ("case", $"/cases/{injury}"),
            ("case editor", $"/cases/{injury}/edit"),
            ("examination", $"/examinations/{view.Examinations[0].Id}"),
            ("reports", $"/cases/{injury}/reports"),
            ("people", $"/people?q={Uri.EscapeDataString(words)}"),
            ("person", $"/people/{owner}"),
            ("yard", $"/yards/{yard}"),
            ("rechecks", "/rechecks"),
            ("reminder", $"/rechecks/{injury}/reminder"),
            ("trail", "/practice/trail"),
        ];
    }
}
