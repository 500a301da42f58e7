using System.Globalization;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Account;
using RehabTrack.Web.Components.Exercise;
using RehabTrack.Web.Components.Forms;
using RehabTrack.Web.Hosting;
using RehabTrack.Web.Shared.Links;

namespace RehabTrack.Web.Shared.Yard;

/// <summary>The two taps of a trainer's day: done as permitted, and checked with no sign. Neither fills in the other.</summary>
public static class YardEndpoints
{
    /// <summary>Maps the addresses.</summary>
    public static void MapYard(this IEndpointRouteBuilder endpoints)
    {
        endpoints
            .MapPost("/yard/{horse:guid}/done", DoneAsync)
            .RequireAuthorization(Policies.Trainer)
            .WithMetadata(new BehindLinkAttribute())
            .DisableAntiforgery();
        endpoints
            .MapPost("/yard/{horse:guid}/checked-none", CheckedNoneAsync)
            .RequireAuthorization(Policies.Trainer)
            .WithMetadata(new BehindLinkAttribute())
            .DisableAntiforgery();
    }

    private static Task<IResult> DoneAsync(Guid horse, HttpContext context, LogDay logDay) =>
        LogAsync(
            horse,
            context,
            logDay,
            "done",
            (form, date) =>
                new DayLog
                {
                    Date = date,
                    Done = new OutingMinutes(
                        Number(form, LogFields.Of(Gait.Walk)) ?? 0,
                        Number(form, LogFields.Of(Gait.Trot)) ?? 0,
                        Number(form, LogFields.Of(Gait.Canter)) ?? 0,
                        Number(form, LogFields.Of(Gait.Gallop)) ?? 0
                    ),
                    Outings = Number(form, LogFields.Outings),
                    Modes = DayLogFields.ModesOf(form[LogFields.Modes]),
                    Circles = DayLogFields.Member<Circles>(form[LogFields.Circles]),
                    Surfaces = DayLogFields.SurfacesOf(form[LogFields.Surfaces]),
                    Turnout = DayLogFields.Member<Turnout>(form[LogFields.Turnout]),
                }
        );

    private static Task<IResult> CheckedNoneAsync(Guid horse, HttpContext context, LogDay logDay) =>
        LogAsync(
            horse,
            context,
            logDay,
            "checked",
            (_, date) =>
                new DayLog
                {
                    Date = date,
                    Heat = SignGrade.None,
                    Swelling = SignGrade.None,
                    Pain = SignGrade.None,
                    Lameness = false,
                }
        );

    private static async Task<IResult> LogAsync(
        Guid horse,
        HttpContext context,
        LogDay logDay,
        string said,
        Func<IFormCollection, DateOnly, DayLog> log
    )
    {
        CheckedForm posted = await CheckedForm.ReadAsync(context);
        if (!posted.IsGood)
        {
            return posted.Refusal ?? Results.LocalRedirect("~/yard");
        }

        Actor actor = ActorClaims.Read(context.User)!;
        // The day of the page that was tapped, not of the tap: a page left open over night still speaks of its own day.
        if (
            !Guid.TryParse(posted.Form[FormFields.Command], out Guid command)
            || command == Guid.Empty
            || DayText.Read(posted.Form[LogFields.Date]) is not { } date
        )
        {
            return Results.LocalRedirect("~/yard");
        }

        Outcome<LogAnswer> outcome = await logDay.ExecuteAsync(
            actor,
            new LogDayInput
            {
                CommandId = command,
                HorseId = horse,
                Log = log(posted.Form, date),
            },
            context.RequestAborted
        );
        // What was refused is told at the horse whose button was tapped.
        return Results.LocalRedirect(
            outcome.Succeeded
                ? $"~/yard?said={said}#horse-{horse}"
                : $"~/yard?refused={Uri.EscapeDataString(outcome.Problems[0].Code)}&horse={horse}#horse-{horse}"
        );
    }

    private static int? Number(IFormCollection form, string field) =>
        int.TryParse(form[field], NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : null;
}
