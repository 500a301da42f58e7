using Microsoft.AspNetCore.Authorization;
using RehabTrack.Records.Rights;

namespace RehabTrack.Web.Account;

/// <summary>Which pages are for whom; the use cases behind them ask again.</summary>
public static class Policies
{
    /// <summary>Those who work in the practice.</summary>
    public const string Staff = "staff";

    /// <summary>Trainers and riders.</summary>
    public const string Trainer = "trainer";

    /// <summary>Owners.</summary>
    public const string Owner = "owner";

    /// <summary>Vets who sent a horse.</summary>
    public const string ReferringVet = "referring-vet";

    /// <summary>Who may read released reports: vets who sent a horse, and those who work in the practice.</summary>
    public const string ReportReaders = "report-readers";

    /// <summary>Those who may report a concern from outside the practice: trainers and owners.</summary>
    public const string Outside = "outside";

    /// <summary>Declares them; a page that names none is for those who are signed in.</summary>
    public static void Add(AuthorizationOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        options.AddPolicy(Staff, policy => policy.RequireRole(Names(RightsTable.IsStaff)));
        options.AddPolicy(Trainer, policy => policy.RequireRole(Names(role => role == Role.Trainer)));
        options.AddPolicy(Owner, policy => policy.RequireRole(Names(role => role == Role.Owner)));
        options.AddPolicy(ReferringVet, policy => policy.RequireRole(Names(role => role == Role.ReferringVet)));
        options.AddPolicy(
            ReportReaders,
            policy => policy.RequireRole(Names(role => RightsTable.ReachOf(role, Right.SeeReports) != Reach.None))
        );
        options.AddPolicy(Outside, policy => policy.RequireRole(Names(role => role is Role.Trainer or Role.Owner)));
        options.FallbackPolicy = new AuthorizationPolicyBuilder().RequireAuthenticatedUser().Build();
    }

    private static IEnumerable<string> Names(Func<Role, bool> belongs) =>
        Enum.GetValues<Role>().Where(belongs).Select(role => role.ToString());
}
