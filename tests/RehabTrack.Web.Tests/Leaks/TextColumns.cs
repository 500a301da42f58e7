using System.Reflection;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Web.Tests.Leaks;

/// <summary>Every text that is kept, by who may read it.</summary>
internal static class TextColumns
{
    /// <summary>Said inside the practice: it leaves it on no page, file or letter for somebody outside.</summary>
    public static IReadOnlyList<string> Internal { get; } =
    [
        "Acknowledgement.Reason",
        "Booking.CancelledReason",
        "Call.Words",
        "Care.ArchivedReason",
        "Care.Context",
        "Care.Words",
        "Case.Diagnosis",
        "Case.ImportLabel",
        "Case.Outcome",
        "Case.TargetWork",
        "Decision.Disagreement",
        "Decision.GroundJson",
        "Examination.Note",
        "Examination.OutsidePractice",
        "Examination.Typed",
        "ExaminationVersion.ContentJson",
        "ExaminationVersion.Reason",
        "ExerciseEntry.ContentJson",
        "ExerciseEntry.MoreJson",
        "ExerciseEntry.OnBehalfOf",
        "Horse.Use",
        "ImportFile.FileName",
        "LinkWord.Reason",
        "LinkWord.WithdrawnReason",
        "Person.Mail",
        "Person.Phone",
        "PlanDraft.ContentJson",
        "Reading.Measurer",
        "Reading.Note",
        "Reminder.Mail",
        "Reminder.Trouble",
        "RepeatTracing.Measurer",
        "RepeatTracing.Subject",
        "TypedForm.FieldsJson",
        "Yard.Address",
        "Yard.Phone",
    ];

    /// <summary>Told to somebody outside: names, what was measured, where and when to come, and what a vet released.</summary>
    public static IReadOnlyList<string> Told { get; } =
    [
        "Booking.Place",
        "Booking.TravelNote",
        "Decision.ReleaseJson",
        "Examination.Examiner",
        "Examination.Name",
        "Examination.Transducer",
        "Horse.Markings",
        "Horse.Microchip",
        "Horse.Name",
        "Person.Name",
        "Practice.Name",
        "Practice.Phone",
        "Reading.Lesion",
        "Reading.Repeat",
        "Reading.Zone",
        "Report.ContentJson",
        "Yard.Name",
    ];

    /// <summary>Codes, hashes, settings, and what somebody signs in with and where: no words of anybody.</summary>
    public static IReadOnlyList<string> Technical { get; } =
    [
        "Acknowledgement.Finding",
        "Acknowledgement.FindingKey",
        "AppliedCommand.ResultJson",
        "AppliedCommand.UseCase",
        "CaseSummary.EngineVersion",
        "CaseSummary.FindingsJson",
        "CaseSummary.InputHash",
        "CaseSummary.SettingsHash",
        "CaseSummary.SettingsJson",
        "Change.AfterJson",
        "Change.BeforeJson",
        "Change.Kind",
        "Change.UseCase",
        "Feed.SecretHash",
        "Horse.FoldedName",
        "Horse.Search",
        "HorsePhoto.Checksum",
        "HorsePhoto.ContentType",
        "ImportFile.Checksum",
        "ImportMapping.Fingerprint",
        "ImportMapping.MappingJson",
        "Invitation.SecretHash",
        "LinkWord.FirstZone",
        "LinkWord.SecondZone",
        "Person.FoldedName",
        "Person.Language",
        "Practice.ErrorOriginsJson",
        "Practice.Language",
        "Practice.SettingsJson",
        "Practice.TimeZone",
        "Reading.EchogenicityScale",
        "Reading.FibreAlignmentScale",
        "Session.Browser",
        "ShareLink.SecretHash",
        "SignInAccount.FoldedSignInName",
        "SignInAccount.PasswordHash",
        "SignInAccount.RecoveryHashes",
        "SignInAccount.SealedKey",
        "SignInAccount.SecurityStamp",
        "SignInAccount.SignInName",
        "SignedFigures.EngineVersion",
        "SignedFigures.FiguresJson",
        "SignedFigures.InputHash",
        "SignedFigures.SettingsHash",
        "Yard.FoldedName",
    ];

    /// <summary>All texts of all tables.</summary>
    public static IEnumerable<(string Name, PropertyInfo Column)> All =>
        Tables.SelectMany(table =>
            table
                .Record.GetProperties()
                .Where(column => column.PropertyType == typeof(string))
                .Select(column => (NameOf(table.Record, column), column))
        );

    /// <summary>All rows of a table.</summary>
    public static Task<List<object>> RowsAsync(RecordsContext records, Type record) =>
        ((IQueryable<object>)Tables.Single(table => table.Record == record).Set.GetValue(records)!).ToListAsync();

    private static IEnumerable<(PropertyInfo Set, Type Record)> Tables =>
        typeof(RecordsContext)
            .GetProperties()
            .Where(property => property.PropertyType is { IsGenericType: true } type && type.GetGenericTypeDefinition() == typeof(DbSet<>))
            .Select(property => (property, property.PropertyType.GetGenericArguments()[0]));

    private static string NameOf(Type record, PropertyInfo column) =>
        $"{(record.Name.EndsWith("Record", StringComparison.Ordinal) ? record.Name[..^"Record".Length] : record.Name)}.{column.Name}";
}
