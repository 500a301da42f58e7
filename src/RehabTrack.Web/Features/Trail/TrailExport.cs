using System.Globalization;
using RehabTrack.Exchange.Writing;
using RehabTrack.Records.History;
using RehabTrack.Records.Room;
using RehabTrack.Web.Account;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Features.Trail;

/// <summary>The trail as a CSV file. It is asked for by a form, since taking it out is noted.</summary>
public static class TrailExport
{
    /// <summary>Where the form is sent.</summary>
    public const string Address = "/practice/trail/trail.csv";

    private static readonly string[] Headings =
    [
        "number",
        "at_utc",
        "at_practice",
        "person",
        "use_case",
        "kind",
        "record_id",
        "case_id",
        "before",
        "after",
        "practice_id",
        "id",
        "person_id",
        "command_id",
        "salt",
        "body_hash",
        "previous_hash",
        "hash",
    ];

    /// <summary>Maps the address.</summary>
    public static void MapTrail(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapPost(Address, DownloadAsync).RequireAuthorization(Policies.Staff).RequireRateLimiting(RateLimits.Files);

    private static async Task<IResult> DownloadAsync(HttpContext context, ExportTrail export)
    {
        CheckedForm posted = await CheckedForm.ReadAsync(context);
        if (!posted.IsGood)
        {
            return posted.Refusal ?? Results.StatusCode(StatusCodes.Status413PayloadTooLarge);
        }

        Records.Rights.Actor actor = ActorClaims.Read(context.User)!;
        // The file is complete before the first byte is sent, however slowly it is taken.
        FileStream file = PassingFile.Create();
        try
        {
            Outcome<long> outcome;
            using (TableWriter table = new(file, Headings))
            {
                outcome = await export.ExecuteAsync(
                    actor,
                    new ExportTrailInput(
                        TrailQuery.Parse(name => posted.Form[name]),
                        row =>
                        {
                            table.Write(Cells(row, actor.PracticeId));
                            return ValueTask.CompletedTask;
                        }
                    ),
                    context.RequestAborted
                );
            }

            if (!outcome.Succeeded)
            {
                await file.DisposeAsync();
                return Results.NotFound();
            }

            file.Position = 0;
            return Results.File(file, "text/csv; charset=utf-8", "trail.csv");
        }
        catch
        {
            await file.DisposeAsync();
            throw;
        }
    }

    private static IEnumerable<string> Cells(TrailRow row, Guid practiceId) =>
        [
            row.Number.ToString(CultureInfo.InvariantCulture),
            row.At.ToString("yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'", CultureInfo.InvariantCulture),
            row.AtPractice.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture),
            row.Person,
            row.UseCase,
            row.Kind,
            row.RecordId.ToString("D"),
            row.CaseId?.ToString("D") ?? "",
            row.BeforeJson ?? "",
            row.AfterJson,
            practiceId.ToString("D"),
            row.Id.ToString("D"),
            row.PersonId.ToString("D"),
            row.CommandId.ToString("D"),
            row.Salt,
            row.BodyHash,
            row.PreviousHash,
            row.Hash,
        ];
}
