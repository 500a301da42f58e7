using RehabTrack.Rechecks.Care;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Watch;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Reminders;
using RehabTrack.Web.Features.Board;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Cases;

/// <summary>The words of the history. What has none of its own is told by the name the records give it.</summary>
public static class ChangeWords
{
    private static readonly Dictionary<string, string> Done = new(StringComparer.Ordinal)
    {
        ["OpenCase"] = CasePage.Did_OpenCase,
        ["ChangeCase"] = CasePage.Did_ChangeCase,
        ["ArchiveCase"] = CasePage.Did_ArchiveCase,
        ["BringBackCase"] = CasePage.Did_BringBackCase,
        ["StartExamination"] = CasePage.Did_StartExamination,
        ["SaveDraft"] = CasePage.Did_SaveDraft,
        ["SignExamination"] = CasePage.Did_SignExamination,
        ["AmendExamination"] = CasePage.Did_AmendExamination,
        ["ArchiveDraft"] = CasePage.Did_ArchiveDraft,
        ["BringBackDraft"] = CasePage.Did_BringBackDraft,
        ["PinLink"] = CasePage.Did_PinLink,
        ["BreakLink"] = CasePage.Did_BreakLink,
        ["WithdrawLinkWord"] = CasePage.Did_WithdrawLinkWord,
        ["ApplyImport"] = CasePage.Did_ApplyImport,
        ["LoadDemo"] = CasePage.Did_LoadDemo,
        ["BookRecheck"] = CasePage.Did_BookRecheck,
        ["MoveBooking"] = CasePage.Did_MoveBooking,
        ["CancelBooking"] = CasePage.Did_CancelBooking,
        ["NoteCall"] = CasePage.Did_NoteCall,
        ["BeginReminder"] = CasePage.Did_BeginReminder,
        ["SettleReminder"] = CasePage.Did_SettleReminder,
        ["SetInterval"] = CasePage.Did_SetInterval,
        ["CloseCase"] = CasePage.Did_CloseCase,
        ["SaveCare"] = CasePage.Did_SaveCare,
        ["ArchiveCare"] = CasePage.Did_ArchiveCare,
        ["BringBackCare"] = CasePage.Did_BringBackCare,
        ["AcknowledgeFinding"] = CasePage.Did_AcknowledgeFinding,
    };

    private static readonly Dictionary<ReminderState, string> ReminderStates = new()
    {
        [ReminderState.Begun] = CasePage.Reminder_Begun,
        [ReminderState.Sent] = CasePage.Reminder_Sent,
        [ReminderState.Refused] = CasePage.Reminder_Refused,
    };

    private static readonly Dictionary<string, string> Kinds = new(StringComparer.Ordinal)
    {
        ["Case"] = CasePage.Kind_Case,
        ["Examination"] = CasePage.Kind_Examination,
        ["LinkWord"] = CasePage.Kind_LinkWord,
        ["Horse"] = CasePage.Kind_Horse,
        ["Booking"] = CasePage.Kind_Booking,
        ["Call"] = CasePage.Kind_Call,
        ["Reminder"] = CasePage.Kind_Reminder,
        ["Care"] = CasePage.Kind_Care,
        ["Acknowledgement"] = CasePage.Kind_Acknowledgement,
        ["Access"] = CasePage.Kind_Access,
        ["Erasure"] = CasePage.Kind_Erasure,
        ["Person"] = CasePage.Kind_Person,
        ["Practice"] = CasePage.Kind_Practice,
        ["Yard"] = CasePage.Kind_Yard,
        ["HorseLink"] = CasePage.Kind_HorseLink,
        ["HorsePhoto"] = CasePage.Kind_HorsePhoto,
        ["ImportMapping"] = CasePage.Kind_ImportMapping,
        ["RepeatTracing"] = CasePage.Kind_RepeatTracing,
        ["ExerciseEntry"] = CasePage.Kind_ExerciseEntry,
        ["PlanDraft"] = CasePage.Kind_PlanDraft,
        ["Decision"] = CasePage.Kind_Decision,
        ["Concern"] = CasePage.Kind_Concern,
        ["Cover"] = CasePage.Kind_Cover,
        ["Feed"] = CasePage.Kind_Feed,
    };

    private static readonly Dictionary<string, string> Fields = new(StringComparer.Ordinal)
    {
        ["date"] = CasePage.Field_date,
        ["name"] = CasePage.Field_name,
        ["stance"] = CasePage.Field_stance,
        ["state"] = CasePage.Field_state,
        ["examiner"] = CasePage.Field_examiner,
        ["transducer"] = CasePage.Field_transducer,
        ["standoff"] = CasePage.Field_standoff,
        ["coupling"] = CasePage.Field_coupling,
        ["clipped"] = CasePage.Field_clipped,
        ["note"] = CasePage.Field_note,
        ["signedAt"] = CasePage.Field_signedAt,
        ["signedById"] = CasePage.Field_signedById,
        ["enteredById"] = CasePage.Field_enteredById,
        ["part"] = CasePage.Field_part,
        ["levelCm"] = CasePage.Field_levelCm,
        ["plane"] = CasePage.Field_plane,
        ["lesion"] = CasePage.Field_lesion,
        ["role"] = CasePage.Field_role,
        ["ligamentAreaCm2"] = CasePage.Field_ligamentAreaCm2,
        ["lesionAreaCm2"] = CasePage.Field_lesionAreaCm2,
        ["lesionIsDiffuse"] = CasePage.Field_lesionIsDiffuse,
        ["lesionPercent"] = CasePage.Field_lesionPercent,
        ["thicknessCm"] = CasePage.Field_thicknessCm,
        ["widthCm"] = CasePage.Field_widthCm,
        ["echogenicityScale"] = CasePage.Field_echogenicityScale,
        ["echogenicityGrade"] = CasePage.Field_echogenicityGrade,
        ["fibreAlignmentScale"] = CasePage.Field_fibreAlignmentScale,
        ["fibreAlignmentGrade"] = CasePage.Field_fibreAlignmentGrade,
        ["measurer"] = CasePage.Field_measurer,
        ["repeat"] = CasePage.Field_repeat,
        ["position"] = CasePage.Field_position,
        ["limb"] = CasePage.Field_limb,
        ["structure"] = CasePage.Field_structure,
        ["landmark"] = CasePage.Field_landmark,
        ["onset"] = CasePage.Field_onset,
        ["reinjury"] = CasePage.Field_reinjury,
        ["firstDiagnosis"] = CasePage.Field_firstDiagnosis,
        ["diagnosis"] = CasePage.Field_diagnosis,
        ["targetWork"] = CasePage.Field_targetWork,
        ["targetFraction"] = CasePage.Field_targetFraction,
        ["otherLimb"] = CasePage.Field_otherLimb,
        ["hockToJointCm"] = CasePage.Field_hockToJointCm,
        ["zoneLengthCm"] = CasePage.Field_zoneLengthCm,
        ["zones"] = CasePage.Field_zones,
        ["zoneScheme"] = CasePage.Field_zones,
        ["zone"] = CasePage.Field_zone,
        ["originCm"] = CasePage.Field_originCm,
        ["divisionCm"] = CasePage.Field_divisionCm,
        ["medialInsertionCm"] = CasePage.Field_medialInsertionCm,
        ["lateralInsertionCm"] = CasePage.Field_lateralInsertionCm,
        ["otherLimbLigamentAreaCm2"] = CasePage.Field_otherLimbLigamentAreaCm2,
        ["otherLimbThicknessCm"] = CasePage.Field_otherLimbThicknessCm,
        ["reason"] = CasePage.Field_reason,
        ["finding"] = CasePage.Field_finding,
        ["since"] = CasePage.Field_since,
        ["time"] = CasePage.Field_time,
        ["minutes"] = CasePage.Field_minutes,
        ["vetId"] = CasePage.Field_vetId,
        ["place"] = CasePage.Field_place,
        ["travelNote"] = CasePage.Field_travelNote,
        ["afterExamination"] = CasePage.Field_afterExamination,
        ["cancelledReason"] = CasePage.Field_cancelledReason,
        ["outcome"] = CasePage.Field_outcome,
        ["personId"] = CasePage.Field_personId,
        ["words"] = CasePage.Field_words,
        ["mail"] = CasePage.Field_mail,
        ["dueOn"] = CasePage.Field_dueOn,
        ["trouble"] = CasePage.Field_trouble,
        ["recheckIntervalDays"] = CasePage.Field_recheckIntervalDays,
        ["responsibleVetId"] = CasePage.Field_responsibleVetId,
        ["end"] = CasePage.Field_end,
        ["endedOn"] = CasePage.Field_endedOn,
        ["importLabel"] = CasePage.Field_importLabel,
        ["archivedAt"] = CasePage.Field_archivedAt,
        ["kind"] = CasePage.Field_kind,
        ["from"] = CasePage.Field_from,
        ["until"] = CasePage.Field_until,
        ["grade"] = CasePage.Field_grade,
        ["lamenessAaep"] = CasePage.Field_lamenessAaep,
        ["context"] = CasePage.Field_context,
        ["standDownUntil"] = CasePage.Field_standDownUntil,
        ["archivedReason"] = CasePage.Field_reason,
        ["phone"] = CasePage.Field_phone,
        ["language"] = CasePage.Field_language,
        ["canSignIn"] = CasePage.Field_canSignIn,
        ["detail"] = CasePage.Field_detail,
        ["numbers"] = CasePage.Field_numbers,
        ["timeZone"] = CasePage.Field_timeZone,
        ["address"] = CasePage.Field_address,
    };

    // Who did it and when stands in the line itself, and of what in the page's head.
    private static readonly HashSet<string> Untold = new(StringComparer.Ordinal)
    {
        "horseId",
        "findingKey",
        "severity",
        "weight",
        "saidById",
        "saidAt",
        "caseId",
        "bookedById",
        "bookedAt",
        "cancelledAt",
        "notedById",
        "notedAt",
        "begunById",
        "enteredAt",
        "correctedById",
        "correctedAt",
        "standDownById",
        "begunAt",
        "settledAt",
        "closedAt",
        "closedById",
        "sequence",
        "changedAt",
    };

    /// <summary>What a use case did, in words; null when it has none.</summary>
    public static string? DoneBy(string useCase) => Done.GetValueOrDefault(useCase);

    /// <summary>A kind of record.</summary>
    public static string Kind(string kind) => Kinds.GetValueOrDefault(kind, kind);

    /// <summary>A field of a record.</summary>
    public static string Field(string field) => Fields.GetValueOrDefault(field, field);

    /// <summary>Whether a field is told at all.</summary>
    public static bool IsTold(string field) => !Untold.Contains(field);

    /// <summary>A value of a field, in words where it is a code.</summary>
    /// <param name="kind">The kind of record.</param>
    /// <param name="field">The field.</param>
    /// <param name="value">The value as kept.</param>
    public static string? Value(string kind, string field, string? value) =>
        (kind, field) switch
        {
            ("Call", "outcome") when Enum.TryParse(value, out CallOutcome outcome) => BoardWords.Of(outcome),
            ("Reminder", "state") when Enum.TryParse(value, out ReminderState state) => ReminderStates[state],
            ("Care", "kind") when Enum.TryParse(value, out CareKind care) => Names.Of(care),
            ("Care", "grade") when Enum.TryParse(value, out SignGrade grade) => Names.Of(grade),
            ("Acknowledgement", "finding") when Enum.TryParse(value, out FindingKind finding) => Names.Of(finding),
            ("Acknowledgement", "finding") when Enum.TryParse(value, out StandingKind standing) => StandingSentences.Title(standing),
            _ => value,
        };
}
