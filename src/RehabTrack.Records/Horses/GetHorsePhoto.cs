using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Horses;

/// <summary>Reads the photo of a horse.</summary>
public sealed class GetHorsePhoto(RecordsAccess access) : UseCase<Guid, HorsePhotoView>(access)
{
    private protected override Right Right => Right.SeeHorsePhotos;

    private protected override async Task<Outcome<HorsePhotoView>> RunAsync(
        RecordsSession session,
        Guid input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        IQueryable<HorseRecord> horses = records.Horses.Where(horse => horse.Id == input);
        if (session.Reach == Reach.OwnHorses)
        {
            horses = HorsePeople.Own(session, horses);
        }

        HorsePhotoView? photo = await (
            from horse in horses
            join kept in records.HorsePhotos on horse.PhotoId equals kept.Id
            select new HorsePhotoView(kept.ContentType, kept.Content, kept.Checksum)
        ).FirstOrDefaultAsync(cancellation);
        return photo is null ? RecordProblems.NotFound("photo") : photo;
    }
}
