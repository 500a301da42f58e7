using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Horses;

/// <summary>Keeps a photo of a horse; the earlier one stays kept, and is no longer shown.</summary>
public sealed class SaveHorsePhoto(RecordsAccess access) : Command<SaveHorsePhotoInput, Saved>(access)
{
    private const int LargestBytes = 5 * 1024 * 1024;
    private static readonly string[] ContentTypes = ["image/jpeg", "image/png", "image/webp"];

    private protected override Right Right => Right.ChangeHorses;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        SaveHorsePhotoInput input,
        CancellationToken cancellation
    )
    {
        HorseRecord? horse = await session.Records.Horses.FirstOrDefaultAsync(
            record => record.Id == input.HorseId && record.ArchivedAt == null,
            cancellation
        );
        if (horse is null)
        {
            return RecordProblems.NotFound("horse");
        }

        if (input.Content.Length > LargestBytes)
        {
            return new Problem("photo", "photo-too-large", RecordText.Of(LargestBytes / 1024 / 1024));
        }

        if (input.Content.Length > 0 && !ContentTypes.Contains(input.ContentType, StringComparer.Ordinal))
        {
            return new Problem("photo", "photo-type-unknown", input.ContentType);
        }

        Guid? photoId = null;
        if (input.Content.Length > 0)
        {
            HorsePhotoRecord photo = new()
            {
                Id = session.NewId(),
                HorseId = horse.Id,
                ContentType = input.ContentType,
                Content = input.Content,
                Checksum = Convert.ToHexStringLower(SHA256.HashData(input.Content)),
            };
            session.Records.HorsePhotos.Add(photo);
            photoId = photo.Id;
        }

        horse.PhotoId = photoId;
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(horse.Id, horse.Version);
    }
}
