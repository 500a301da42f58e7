namespace RehabTrack.Records.Rights;

/// <summary>What a use case asks the gate for.</summary>
public enum Right
{
    /// <summary>Read the practice's name and telephone number.</summary>
    SeePractice,

    /// <summary>Change the practice and its settings.</summary>
    ChangePractice,

    /// <summary>Read people and yards.</summary>
    SeePeople,

    /// <summary>Add and change owners, trainers, referring vets and yards.</summary>
    ChangeContacts,

    /// <summary>Add and change those who work here, and who may sign in.</summary>
    ChangeStaff,

    /// <summary>Read horses.</summary>
    SeeHorses,

    /// <summary>See the photos by which horses are told apart.</summary>
    SeeHorsePhotos,

    /// <summary>Add and change horses.</summary>
    ChangeHorses,

    /// <summary>Read cases, examinations and verdicts.</summary>
    SeeCases,

    /// <summary>Open and change cases.</summary>
    ChangeCases,

    /// <summary>Close cases because the horse left, with a signature.</summary>
    CloseCases,

    /// <summary>Book rechecks, note calls and send reminders.</summary>
    BookRechecks,

    /// <summary>Say which vet stands in for another.</summary>
    ChangeCover,

    /// <summary>Write drafts of examinations.</summary>
    EnterExaminations,

    /// <summary>Sign examinations, and amend what was signed.</summary>
    SignExaminations,

    /// <summary>Pin and break links.</summary>
    ChangeLinks,

    /// <summary>Import files.</summary>
    Import,

    /// <summary>See the backups, and make one.</summary>
    KeepBackups,

    /// <summary>Read who changed what.</summary>
    SeeHistory,

    /// <summary>Read, check and take out the practice's whole trail.</summary>
    SeeTrail,

    /// <summary>Take out and erase what is held of a person.</summary>
    KeepPersonalData,

    /// <summary>Read what is permitted today, and what a vet released.</summary>
    SeePermits,

    /// <summary>Enter a day's exercise, say that a horse does not work.</summary>
    LogExercise,

    /// <summary>Report a concern.</summary>
    ReportConcerns,

    /// <summary>Read plans, decisions, logs and concerns, and write plans that are not signed.</summary>
    WorkOnExercise,

    /// <summary>Read the reports on a case that were released for oneself.</summary>
    SeeReports,

    /// <summary>Make and take back the links through which owners, trainers and referring vets read without signing in.</summary>
    ShareLinks,

    /// <summary>See and end one's own sessions.</summary>
    KeepOwnAccount,

    /// <summary>Sign plans and decisions, and release what owner, trainer and referring vet read.</summary>
    DecideExercise,
}
