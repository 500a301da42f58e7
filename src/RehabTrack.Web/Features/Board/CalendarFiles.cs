using System.Security.Cryptography;
using System.Text;
using Microsoft.Net.Http.Headers;
using RehabTrack.Records.Feeds;
using RehabTrack.Records.Room;
using RehabTrack.Records.Start;
using RehabTrack.Reports.Calendar;
using RehabTrack.Web.Account;
using RehabTrack.Web.Components;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Features.Board;

/// <summary>Gives booked rechecks as calendar files: one to a person of the practice, all to whoever holds the secret address.</summary>
public static class CalendarFiles
{
    private const int LongestSecret = 64;

    /// <summary>The path of the practice's calendar.</summary>
    public static string FeedPath(AddressSecret secret)
    {
        ArgumentNullException.ThrowIfNull(secret);
        return $"/calendar/{secret.Text}/rechecks.ics";
    }

    /// <summary>The path of one booked recheck.</summary>
    public static string VisitPath(Guid bookingId) => $"/rechecks/{bookingId:D}/recheck.ics";

    /// <summary>Maps the addresses.</summary>
    public static void MapCalendars(this IEndpointRouteBuilder endpoints)
    {
        endpoints
            .MapGet("/rechecks/{id:guid}/recheck.ics", VisitAsync)
            .RequireAuthorization(Policies.Staff)
            .RequireRateLimiting(RateLimits.Files);
        endpoints.MapGet("/calendar/{secret}/rechecks.ics", FeedAsync).AllowAnonymous().RequireRateLimiting(RateLimits.Calendars);
    }

    private static async Task<IResult> VisitAsync(Guid id, HttpContext context, GetCalendarVisit getVisit)
    {
        Outcome<CalendarContent> outcome = await getVisit.ExecuteAsync(ActorClaims.Read(context.User)!, id, context.RequestAborted);
        return outcome.Succeeded ? File(context, outcome.Value, "recheck.ics") : Results.NotFound();
    }

    private static async Task<IResult> FeedAsync(string secret, HttpContext context, FeedDoor door) =>
        secret.Length <= LongestSecret && await door.FindAsync(AddressSecret.HashOf(secret), context.RequestAborted) is { } content
            ? File(context, content, null)
            : Results.NotFound();

    private static IResult File(HttpContext context, CalendarContent content, string? name)
    {
        byte[] file = Encoding.UTF8.GetBytes(RecheckCalendar.Write(content.PracticeName, content.Visits.Select(Entry)));
        context.Response.Headers.CacheControl = "private, no-cache";
        return Results.Bytes(
            file,
            RecheckCalendar.MediaType,
            name,
            entityTag: new EntityTagHeaderValue($"\"{Convert.ToHexStringLower(SHA256.HashData(file))}\"")
        );
    }

    private static CalendarEntry Entry(CalendarVisit visit) =>
        new()
        {
            Id = visit.BookingId,
            Sequence = visit.Sequence,
            HorseName = visit.HorseName,
            Date = visit.Date,
            Begins = visit.Begins,
            Minutes = visit.Minutes,
            Place = visit.Place,
            TravelNote = visit.TravelNote,
            Vet = visit.Vet,
            IsCancelled = visit.IsCancelled,
            BookedAt = visit.BookedAt,
            ChangedAt = visit.ChangedAt,
        };
}
