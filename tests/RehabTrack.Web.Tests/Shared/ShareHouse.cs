using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Horses;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;
using RehabTrack.Web.Components;
using RehabTrack.Web.Shared.Links;

namespace RehabTrack.Web.Tests.Shared;

/// <summary>Horses with owner and trainer on a running server, and the links to them.</summary>
internal sealed class ShareHouse(IServiceProvider services, Actor vet)
{
    public async Task<Guid> PersonAsync(string name, Role role) =>
        (
            await AskAsync<SavePerson, SavePersonInput, Saved>(
                new SavePersonInput
                {
                    CommandId = Guid.NewGuid(),
                    Name = name,
                    Role = role,
                }
            )
        ).Id;

    /// <summary>A horse with an open case of its left hind limb.</summary>
    public async Task<Guid> HorseAsync(string name, Guid? owner, Guid? trainer)
    {
        Guid horse = (
            await AskAsync<SaveHorse, SaveHorseInput, Saved>(
                new SaveHorseInput
                {
                    CommandId = Guid.NewGuid(),
                    Name = name,
                    OwnerId = owner,
                    TrainerId = trainer,
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
    public async Task<(string Path, Saved Link)> LinkAsync(Guid person, HorseRelation relation, Guid? horse)
    {
        AddressSecret secret = AddressSecret.Make();
        Saved link = await AskAsync<RenewShare, RenewShareInput, Saved>(
            new RenewShareInput
            {
                CommandId = Guid.NewGuid(),
                PersonId = person,
                Relation = relation,
                HorseId = horse,
                SecretHash = secret.Hash,
            }
        );
        return (ShareAddress.PathOf(secret.Text), link);
    }

    public Task<Saved> RevokeAsync(Saved link) =>
        AskAsync<RevokeShare, RecordInput, Saved>(new RecordInput(Guid.NewGuid(), link.Id, link.Version));

    public async Task<T> AskAsync<TUseCase, TInput, T>(TInput input)
        where TUseCase : UseCase<TInput, T> => (await services.GetRequiredService<TUseCase>().ExecuteAsync(vet, input)).Value;
}
