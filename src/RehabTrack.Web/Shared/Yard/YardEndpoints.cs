using System.Globalization;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Account;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Shared.Yard;

/// <summary>The two taps of a trainer's day: done as permitted, and checked with no sign. Neither fills in the other.</summary>
public static class YardEndpoints
{
    /// <summary>Maps the addresses.</summary>
    public static void MapYard(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapPost("/yard/{horse:guid}/done", DoneAsync).RequireAuthorization(Policies.Trainer).DisableAntiforgery();
        endpoints.MapPost("/yard/{horse:guid}/checked-none", CheckedNoneAsync).RequireAuthorization(Policies.Trainer).DisableAntiforgery();
    }

    private static Task<IResult> DoneAsync(Guid horse, HttpContext context, LogDay logDay, GetPractice getPractice) =>
        LogAsync(
            horse,
            context,
            logDay,
            getPractice,
            "done",
            (form, today) =>
                new DayLog
                {
                    Date = today,
                    Done = new OutingMinutes(
                        Number(form, DayFields.Of(Gait.Walk)) ?? 0,
                        Number(form, DayFields.Of(Gait.Trot)) ?? 0,
                        Number(form, DayFields.Of(Gait.Canter)) ?? 0,
                        Number(form, DayFields.Of(Gait.Gallop)) ?? 0
                    ),
                    Outings = Number(form, DayFields.Outings),
                }
        );

    private static Task<IResult> CheckedNoneAsync(Guid horse, HttpContext context, LogDay logDay, GetPractice getPractice) =>
        LogAsync(
            horse,
            context,
            logDay,
            getPractice,
            "checked",
            (_, today) =>
                new DayLog
                {
                    Date = today,
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
        GetPractice getPractice,
        string said,
        Func<IFormCollection, DateOnly, DayLog> log
    )
    {
        CheckedForm posted = await CheckedForm.ReadAsync(context);
        if (!posted.IsGood)
        {
            return posted.Refusal ?? Results.LocalRedirect("/yard");
        }

        Actor actor = ActorClaims.Read(context.User)!;
        Outcome<PracticeView> practice = await getPractice.ExecuteAsync(actor, NoInput.Value, context.RequestAborted);
        if (!practice.Succeeded || !Guid.TryParse(posted.Form[DayFields.Command], out Guid command) || command == Guid.Empty)
        {
            return Results.LocalRedirect("/yard");
        }

        Outcome<LogAnswer> outcome = await logDay.ExecuteAsync(
            actor,
            new LogDayInput
            {
                CommandId = command,
                HorseId = horse,
                Log = log(posted.Form, practice.Value.Today),
            },
            context.RequestAborted
        );
        // What was refused is told beside its field, on the page that has the fields.
        return Results.LocalRedirect(outcome.Succeeded ? $"/yard?said={said}#horse-{horse}" : $"/yard/{horse}/log");
    }

    private static int? Number(IFormCollection form, string field) =>
        int.TryParse(form[field], NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : null;
}
