namespace RehabTrack.Records.Rights;

/// <summary>The one table of what a role may do.</summary>
public static class RightsTable
{
    /// <summary>How far a right reaches for a role.</summary>
    public static Reach ReachOf(Role role, Right right) =>
        role switch
        {
            Role.Vet => Reach.Practice,
            Role.Administrator => right is Right.SignExaminations or Right.ChangeLinks or Right.DecideExercise or Right.CloseCases
                ? Reach.None
                : Reach.Practice,
            Role.Assistant => right
                is Right.SignExaminations
                    or Right.ChangeLinks
                    or Right.ChangePractice
                    or Right.ChangeStaff
                    or Right.SeeTrail
                    or Right.KeepPersonalData
                    or Right.DecideExercise
                    or Right.CloseCases
                    or Right.ChangeCover
                    or Right.KeepBackups
                ? Reach.None
                : Reach.Practice,
            Role.Trainer => BesideHorse(right) || right is Right.LogExercise ? Reach.OwnHorses : Reach.None,
            Role.Owner => BesideHorse(right) ? Reach.OwnHorses : Reach.None,
            Role.ReferringVet => Outside(right) || right is Right.SeeReports ? Reach.OwnHorses : Reach.None,
        };

    /// <summary>Whether it is for who may change staff to say: who works here, and who comes in by a name of their own.</summary>
    public static bool ConcernsStaff(Role role, bool canSignIn) => canSignIn || IsStaff(role);

    /// <summary>Whether the role belongs to those who work in the practice.</summary>
    public static bool IsStaff(Role role) => role is Role.Administrator or Role.Vet or Role.Assistant;

    private static bool BesideHorse(Right right) =>
        Outside(right) || right is Right.SeeHorsePhotos or Right.SeePermits or Right.ReportConcerns;

    private static bool Outside(Right right) => right is Right.SeePractice or Right.SeeHorses or Right.KeepOwnAccount;
}
