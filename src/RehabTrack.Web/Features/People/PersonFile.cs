using System.Text;
using RehabTrack.Records.People;
using RehabTrack.Records.Room;
using RehabTrack.Web.Account;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Features.People;

/// <summary>What is held of a person, as a file. It is asked for by a form, since taking it out is noted.</summary>
public static class PersonFile
{
    /// <summary>Where the form of a person is sent.</summary>
    public static string AddressOf(Guid personId) => $"/people/{personId}/data.json";

    /// <summary>Maps the address.</summary>
    public static void MapPersonFile(this IEndpointRouteBuilder endpoints) =>
        endpoints
            .MapPost("/people/{id:guid}/data.json", DownloadAsync)
            .RequireAuthorization(Policies.Staff)
            .RequireRateLimiting(RateLimits.Files);

    private static async Task<IResult> DownloadAsync(Guid id, HttpContext context, ExportPerson export)
    {
        CheckedForm posted = await CheckedForm.ReadAsync(context);
        if (!posted.IsGood)
        {
            return posted.Refusal ?? Results.StatusCode(StatusCodes.Status413PayloadTooLarge);
        }

        Outcome<string> outcome = await export.ExecuteAsync(ActorClaims.Read(context.User)!, id, context.RequestAborted);
        return outcome.Succeeded
            ? Results.File(Encoding.UTF8.GetBytes(outcome.Value), "application/json; charset=utf-8", "person.json")
            : Results.NotFound();
    }
}
