using RehabTrack.Records.Room;

namespace RehabTrack.Records.Horses;

/// <summary>A photo for a horse.</summary>
public sealed record SaveHorsePhotoInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The horse.</summary>
    public required Guid HorseId { get; init; }

    /// <summary>image/jpeg, image/png or image/webp; whether the bytes are such is looked at before, where they come in.</summary>
    public required string ContentType { get; init; }

    /// <summary>The bytes; none takes the photo away.</summary>
    public required byte[] Content { get; init; }
}
