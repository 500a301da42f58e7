using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Horses;
using RehabTrack.Records.People;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Referrals;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;
using RehabTrack.Web.Components;
using RehabTrack.Web.Shared.Links;

namespace RehabTrack.Web.Tests.Shared;

/// <summary>Horses with owner and trainer on a running server, and the links to them.</summary>
internal sealed class ShareHouse(IServiceProvider services, Actor vet)
{
    public async Task<Guid> PersonAsync(string name, Role role, bool canSignIn = false) =>
        (
            await AskAsync<SavePerson, SavePersonInput, Saved>(
                new SavePersonInput
                {
                    CommandId = Guid.NewGuid(),
                    Name = name,
                    Role = role,
                    CanSignIn = canSignIn,
                }
            )
        ).Id;

    /// <summary>A horse with an open case of its left hind limb.</summary>
    public async Task<Guid> HorseAsync(string name, Guid? owner, Guid? trainer, Guid? referringVet = null)
    {
        Guid horse = (
            await AskAsync<SaveHorse, SaveHorseInput, Saved>(
                new SaveHorseInput
                {
                    CommandId = Guid.NewGuid(),
                    Name = name,
                    OwnerId = owner,
                    TrainerId = trainer,
                    ReferringVetId = referringVet,
                }
            )
        ).Id;
        await AskAsync<OpenCase, OpenCaseInput, Saved>(
            new OpenCaseInput
            {
                CommandId = Guid.NewGuid(),
                HorseId = horse,
                Limb = Limb.LeftHind,
                Structure = Structure.SuspensoryLigament,
            }
        );
        return horse;
    }

    /// <summary>A new link: its path, and what is needed to take it back.</summary>
    public async Task<(string Path, Saved Link)> LinkAsync(Guid person, HorseRelation relation, Guid? horse, Guid? yard = null)
    {
        AddressSecret secret = AddressSecret.Make();
        Saved link = await AskAsync<RenewShare, RenewShareInput, Saved>(
            new RenewShareInput
            {
                CommandId = Guid.NewGuid(),
                PersonId = person,
                Relation = relation,
                HorseId = horse,
                YardId = yard,
                SecretHash = secret.Hash,
            }
        );
        return (ShareAddress.PathOf(secret.Text), link);
    }

    /// <summary>Releases a report on a case for a referring vet, and makes a link to it.</summary>
    public async Task<string> ReportLinkAsync(Guid injury, Guid person, string words) =>
        (await ReportLinkAsync(person, (await ReleaseAsync(injury, person, words)).Id)).Path;

    /// <summary>A new link to a report that was released.</summary>
    public async Task<(string Path, Saved Link)> ReportLinkAsync(Guid person, Guid report)
    {
        AddressSecret secret = AddressSecret.Make();
        Saved link = await AskAsync<RenewShare, RenewShareInput, Saved>(
            new RenewShareInput
            {
                CommandId = Guid.NewGuid(),
                PersonId = person,
                Relation = HorseRelation.ReferringVet,
                ReportId = report,
                SecretHash = secret.Hash,
            }
        );
        return (ShareAddress.PathOf(secret.Text), link);
    }

    public Task<Saved> ReleaseAsync(Guid injury, Guid person, string words) =>
        AskAsync<ReleaseReport, ReleaseReportInput, Saved>(new ReleaseReportInput(Guid.NewGuid(), injury, person, words));

    /// <summary>The practice's date, which is another one than that of UTC for some hours of a day.</summary>
    public async Task<DateOnly> TodayAsync() => (await AskAsync<GetPractice, NoInput, PracticeView>(NoInput.Value)).Today;

    /// <summary>Signs an examination of the horse's first case.</summary>
    public async Task<Guid> SignedCaseAsync(Guid horse, string note = "internal of the examination")
    {
        HorseView view = await AskAsync<GetHorse, Guid, HorseView>(horse);
        Guid injury = view.Cases[0].Id;
        Saved started = await AskAsync<StartExamination, StartExaminationInput, Saved>(
            new StartExaminationInput
            {
                CommandId = Guid.NewGuid(),
                CaseId = injury,
                FromLast = false,
            }
        );
        SavedDraft draft = await AskAsync<SaveDraft, SaveDraftInput, SavedDraft>(
            new SaveDraftInput
            {
                CommandId = Guid.NewGuid(),
                Id = started.Id,
                Version = started.Version,
                Content = new ExaminationContent
                {
                    Date = (await TodayAsync()).AddDays(-3),
                    Note = note,
                    Readings = [Reading(16, 0), Reading(18, 0.3), Reading(20, 0)],
                },
            }
        );
        await AskAsync<SignExamination, SignExaminationInput, Saved>(new SignExaminationInput(Guid.NewGuid(), draft.Id, draft.Version));
        return injury;
    }

    public Task<Saved> RevokeAsync(Saved link) =>
        AskAsync<RevokeShare, RecordInput, Saved>(new RecordInput(Guid.NewGuid(), link.Id, link.Version));

    public async Task<T> AskAsync<TUseCase, TInput, T>(TInput input)
        where TUseCase : UseCase<TInput, T> => (await services.GetRequiredService<TUseCase>().ExecuteAsync(vet, input)).Value;

    private static DraftReading Reading(double level, double lesion) =>
        new(
            null,
            new ReadingDraft
            {
                Part = Part.Body,
                LevelCm = level,
                LigamentAreaCm2 = 1.5,
                LesionAreaCm2 = lesion,
                Note = "internal of a reading",
            }
        );
}
