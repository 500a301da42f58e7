using RehabTrack.Records.Horses;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Account;
using RehabTrack.Web.Hosting;
using RehabTrack.Web.Shared.Links;

namespace RehabTrack.Web.Features.Horses;

/// <summary>Takes and gives a horse's photo over plain HTTP.</summary>
public static class PhotoUpload
{
    /// <summary>Larger in pixels than the limit.</summary>
    public const string TooManyPixels = "photo-too-many-pixels";

    private const string TooLarge = "photo-too-large";
    private const string TypeUnknown = "photo-type-unknown";
    private const string Missing = "photo-missing";

    /// <summary>The codes that an upload may come back with.</summary>
    public static IReadOnlyList<string> Codes { get; } = [TooLarge, TypeUnknown, TooManyPixels, Missing];

    /// <summary>Maps the addresses.</summary>
    public static void MapPhotos(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapGet("/horses/{id:guid}/photo", GetAsync).WithMetadata(new BehindLinkAttribute());
        endpoints
            .MapPost("/horses/{id:guid}/photo", PostAsync)
            .RequireAuthorization(Policies.Staff)
            .DisableAntiforgery()
            .RequireRateLimiting(RateLimits.Uploads)
            // What is somewhat too large is still received, so that a sentence can say so.
            .WithMetadata(new Microsoft.AspNetCore.Mvc.RequestSizeLimitAttribute(4 * PhotoLimits.LargestBytes))
            .WithFormOptions(multipartBodyLengthLimit: PhotoLimits.LargestBytes + 64 * 1024);
    }

    private static async Task<IResult> GetAsync(Guid id, HttpContext context, GetHorsePhoto getPhoto)
    {
        if (ActorClaims.Read(context.User) is not { } actor)
        {
            return Results.Forbid();
        }

        Outcome<HorsePhotoView> outcome = await getPhoto.ExecuteAsync(actor, id, context.RequestAborted);
        if (!outcome.Succeeded)
        {
            return Results.NotFound();
        }

        context.Response.Headers.CacheControl = "private, no-cache";
        return Results.Bytes(
            outcome.Value.Content,
            outcome.Value.ContentType,
            entityTag: new Microsoft.Net.Http.Headers.EntityTagHeaderValue($"\"{outcome.Value.Checksum}\"")
        );
    }

    private static async Task<IResult> PostAsync(Guid id, HttpContext context, SaveHorsePhoto savePhoto)
    {
        Actor actor = ActorClaims.Read(context.User)!;
        CheckedForm posted = await CheckedForm.ReadAsync(context);
        if (!posted.IsGood)
        {
            return posted.Refusal ?? Back(id, TooLarge);
        }

        IFormCollection form = posted.Form;

        byte[] content = [];
        string contentType = "image/jpeg";
        if (form["remove"] != "true")
        {
            if (form.Files.GetFile("photo") is not { Length: > 0 } file)
            {
                return Back(id, Missing);
            }

            if (file.Length > PhotoLimits.LargestBytes)
            {
                return Back(id, TooLarge);
            }

            using MemoryStream buffer = new((int)file.Length);
            await file.CopyToAsync(buffer, context.RequestAborted);
            content = buffer.ToArray();
            if (PhotoHeader.Read(content) is not { } header)
            {
                return Back(id, TypeUnknown);
            }

            if ((long)header.Width * header.Height > PhotoLimits.LargestMegapixels * 1_000_000L)
            {
                return Back(id, TooManyPixels);
            }

            contentType = header.ContentType;
        }

        Outcome<Saved> outcome = await savePhoto.ExecuteAsync(
            actor,
            new SaveHorsePhotoInput
            {
                CommandId = posted.CommandOf(content),
                HorseId = id,
                ContentType = contentType,
                Content = content,
            },
            context.RequestAborted
        );
        return outcome switch
        {
            { Succeeded: true } => Results.LocalRedirect($"/horses/{id}"),
            { Problems: [{ Code: "not-found" or "not-allowed" }] } => Results.NotFound(),
            _ => Back(id, outcome.Problems[0].Code),
        };
    }

    private static IResult Back(Guid id, string code) => Results.LocalRedirect($"/horses/{id}/edit?photo={code}");
}
