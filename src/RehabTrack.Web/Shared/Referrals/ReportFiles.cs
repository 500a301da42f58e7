using RehabTrack.Records.Referrals;
using RehabTrack.Records.Room;
using RehabTrack.Reports.Paper;
using RehabTrack.Web.Account;
using RehabTrack.Web.Components.Referrals;
using RehabTrack.Web.Hosting;
using RehabTrack.Web.Shared.Links;

namespace RehabTrack.Web.Shared.Referrals;

/// <summary>Gives a released report as a PDF file: to whom it was released, and to those who work in the practice.</summary>
public static class ReportFiles
{
    // It names no horse: it may lie where others see it.
    private const string FileName = "report.pdf";

    /// <summary>The path of a report, below the base of the page: it also stands behind a link.</summary>
    public static string PathOf(Guid reportId) => $"report/{reportId:D}/{FileName}";

    /// <summary>Maps the address.</summary>
    public static void MapReports(this IEndpointRouteBuilder endpoints) =>
        endpoints
            .MapGet("/report/{id:guid}/" + FileName, GetAsync)
            .RequireAuthorization(Policies.ReportReaders)
            .RequireRateLimiting(RateLimits.Files)
            .WithMetadata(new BehindLinkAttribute());

    private static async Task<IResult> GetAsync(Guid id, HttpContext context, GetReport getReport)
    {
        Outcome<ReportView> report = await getReport.ExecuteAsync(ActorClaims.Read(context.User)!, id, context.RequestAborted);
        return report.Succeeded
            ? Results.Bytes(PaperFile.Write(ReportPaper.Of(report.Value)), PaperFile.MediaType, FileName)
            : Results.NotFound();
    }
}
