using RehabTrack.Exchange.Writing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Room;
using RehabTrack.Web.Account;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Features.Import;

/// <summary>Takes a file to import over plain HTTP, and gives the sheets that can be downloaded.</summary>
public static class ImportUpload
{
    /// <summary>The file was larger than the limit.</summary>
    public const string TooLarge = "too-large";

    /// <summary>No file came along.</summary>
    public const string Missing = "missing";

    // Beyond the limit a file is still received, so that a sentence can say that it is too large, up to this.
    private const int Patience = 4;

    /// <summary>The largest file, in megabytes.</summary>
    public static int LargestMegabytes { get; } = (int)ReferenceTable.Load("limits")["largestImportMegabytes"];

    private static long LargestBytes => LargestMegabytes * 1_000_000L;

    /// <summary>Maps the addresses.</summary>
    public static void MapImports(this IEndpointRouteBuilder endpoints)
    {
        endpoints
            .MapPost("/import/file", HandInAsync)
            .RequireAuthorization(Policies.Staff)
            .DisableAntiforgery()
            .RequireRateLimiting(RateLimits.Uploads)
            .WithMetadata(new Microsoft.AspNetCore.Mvc.RequestSizeLimitAttribute(Patience * LargestBytes))
            .WithFormOptions(multipartBodyLengthLimit: Patience * LargestBytes);
        endpoints
            .MapGet("/import/empty.csv", () => Download(StarterSheets.WriteEmpty(), "rehabtrack-empty.csv"))
            .RequireAuthorization(Policies.Staff)
            .RequireRateLimiting(RateLimits.Files);
        endpoints
            .MapGet("/import/example.csv", () => Download(StarterSheets.WriteExample(), "rehabtrack-example.csv"))
            .RequireAuthorization(Policies.Staff)
            .RequireRateLimiting(RateLimits.Files);
        endpoints
            .MapGet("/import/{id:guid}/wrong.csv", WrongAsync)
            .RequireAuthorization(Policies.Staff)
            .RequireRateLimiting(RateLimits.Files);
    }

    private static async Task<IResult> HandInAsync(HttpContext context, StageImportFile stage)
    {
        CheckedForm posted = await CheckedForm.ReadAsync(context);
        if (!posted.IsGood)
        {
            return posted.Refusal ?? Back(TooLarge);
        }

        // An empty file is handed in like any other: the page says that it is empty.
        if (posted.Form.Files.GetFile("file") is not { FileName.Length: > 0 } file)
        {
            return Back(Missing);
        }

        if (file.Length > LargestBytes)
        {
            return Back(TooLarge);
        }

        using MemoryStream buffer = new((int)file.Length);
        await file.CopyToAsync(buffer, context.RequestAborted);
        byte[] content = buffer.ToArray();
        Outcome<Saved> outcome = await stage.ExecuteAsync(
            ActorClaims.Read(context.User)!,
            new StageImportFileInput(posted.CommandOf(content), Path.GetFileName(file.FileName), content),
            context.RequestAborted
        );
        return outcome.Succeeded ? Results.LocalRedirect($"/import/{outcome.Value.Id}") : Back(TooLarge);
    }

    private static async Task<IResult> WrongAsync(Guid id, HttpContext context, ImportReader reader)
    {
        Outcome<ImportReading> reading = await reader.ReadAsync(ActorClaims.Read(context.User)!, id, null, context.RequestAborted);
        return reading.Succeeded ? Download(ImportSheets.Wrong(reading.Value.Sheet), "rehabtrack-wrong-rows.csv") : Results.NotFound();
    }

    private static IResult Download(byte[] content, string name) => Results.File(content, "text/csv; charset=utf-8", name);

    private static IResult Back(string problem) => Results.LocalRedirect($"/import?problem={problem}");
}
