using System.Globalization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Care;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Repeats;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Rechecks.Suggestions;

namespace RehabTrack.Wording;

/// <summary>
/// What a person calls the words of the heart. Written in lower case to stand inside a sentence; <see cref="AsTitle"/> makes a heading.
/// Titles of findings begin with a capital: they always stand alone.
/// </summary>
public static class Names
{
    public static string Of(CareGroup group, CultureInfo? culture = null) => Text(nameof(CareGroup), group, culture);

    public static string Of(CareKind kind, CultureInfo? culture = null) => Text(nameof(CareKind), kind, culture);

    public static string Of(Limb limb, CultureInfo? culture = null) => Text(nameof(Limb), limb, culture);

    /// <summary>Two letters for a narrow column: LF, RF, LH, RH; an en dash when not given.</summary>
    public static string Short(Limb limb, CultureInfo? culture = null) => Text("LimbShort", limb, culture);

    public static string Of(Structure structure, CultureInfo? culture = null) => Text(nameof(Structure), structure, culture);

    public static string Of(Part part, CultureInfo? culture = null) => Text(nameof(Part), part, culture);

    public static string Of(LinkPath path, CultureInfo? culture = null) => Text(nameof(LinkPath), path, culture);

    public static string Of(Landmark landmark, CultureInfo? culture = null) => Text(nameof(Landmark), landmark, culture);

    public static string Of(ZoneScheme scheme, CultureInfo? culture = null) => Text(nameof(ZoneScheme), scheme, culture);

    public static string Of(Stance stance, CultureInfo? culture = null) => Text(nameof(Stance), stance, culture);

    public static string Of(ImagePlane plane, CultureInfo? culture = null) => Text(nameof(ImagePlane), plane, culture);

    public static string Of(ReadingRole role, CultureInfo? culture = null) => Text(nameof(ReadingRole), role, culture);

    public static string Of(ExaminationState state, CultureInfo? culture = null) => Text(nameof(ExaminationState), state, culture);

    public static string Of(LesionAreaKind kind, CultureInfo? culture = null) => Text(nameof(LesionAreaKind), kind, culture);

    public static string Of(FixedPointKind kind, CultureInfo? culture = null) => Text(nameof(FixedPointKind), kind, culture);

    public static string Of(OtherLimb other, CultureInfo? culture = null) => Text(nameof(OtherLimb), other, culture);

    public static string Of(PlanPhase phase, CultureInfo? culture = null) => Text(nameof(PlanPhase), phase, culture);

    public static string Of(RepeatKind kind, CultureInfo? culture = null) => Text(nameof(RepeatKind), kind, culture);

    public static string Of(LinkBasis basis, CultureInfo? culture = null) => Text(nameof(LinkBasis), basis, culture);

    public static string Of(LinkConstraintKind kind, CultureInfo? culture = null) => Text(nameof(LinkConstraintKind), kind, culture);

    public static string Of(Gait gait, CultureInfo? culture = null) => Text(nameof(Gait), gait, culture);

    /// <summary>One way of working; a set is named member by member.</summary>
    public static string Of(WorkModes mode, CultureInfo? culture = null) => Text(nameof(WorkModes), mode, culture);

    /// <summary>One kind of ground; a set is named member by member.</summary>
    public static string Of(Surfaces surface, CultureInfo? culture = null) => Text(nameof(Surfaces), surface, culture);

    public static string Of(Circles circles, CultureInfo? culture = null) => Text(nameof(Circles), circles, culture);

    public static string Of(Turnout turnout, CultureInfo? culture = null) => Text(nameof(Turnout), turnout, culture);

    public static string Of(DecisionKind kind, CultureInfo? culture = null) => Text(nameof(DecisionKind), kind, culture);

    public static string Of(PermitHoldKind kind, CultureInfo? culture = null) => Text(nameof(PermitHoldKind), kind, culture);

    public static string Of(RuleAnswer answer, CultureInfo? culture = null) => Text(nameof(RuleAnswer), answer, culture);

    /// <inheritdoc cref="Of(Limb, CultureInfo?)" />
    public static string Of(SignGrade grade, CultureInfo? culture = null) => Text(nameof(SignGrade), grade, culture);

    public static string Of(AdherenceStanding standing, CultureInfo? culture = null) => Text(nameof(AdherenceStanding), standing, culture);

    public static string Of(OverKind kind, CultureInfo? culture = null) => Text(nameof(OverKind), kind, culture);

    public static string Of(PermitState state, CultureInfo? culture = null) => Text(nameof(PermitState), state, culture);

    /// <summary>The verdict as pages say it: "no progress" for stalled, because to horse people a stall is a box.</summary>
    public static string Of(Verdict verdict, CultureInfo? culture = null) => Text(nameof(Verdict), verdict, culture);

    public static string Of(Measure measure, CultureInfo? culture = null) => Text(nameof(Measure), measure, culture);

    public static string Of(MeasuredSize size, CultureInfo? culture = null) => Text(nameof(MeasuredSize), size, culture);

    public static string Of(FindingSeverity severity, CultureInfo? culture = null) => Text(nameof(FindingSeverity), severity, culture);

    /// <summary>Where a case stands against its next recheck.</summary>
    public static string Of(RecheckStanding standing, CultureInfo? culture = null) => Text(nameof(RecheckStanding), standing, culture);

    public static string Of(DueBy by, CultureInfo? culture = null) => Text(nameof(DueBy), by, culture);

    public static string Of(RecheckState state, CultureInfo? culture = null) => Text(nameof(RecheckState), state, culture);

    /// <summary>Why a person's word on a link could not be kept.</summary>
    public static string Of(LeftOutReason reason, CultureInfo? culture = null) => Text(nameof(LeftOutReason), reason, culture);

    /// <summary>A finding's title; its sentence is another matter.</summary>
    public static string Of(FindingKind kind, CultureInfo? culture = null) => Text(nameof(FindingKind), kind, culture);

    /// <summary>The same text with a capital first letter.</summary>
    public static string AsTitle(string text, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length == 0 ? text : string.Concat(text[..1].ToUpper(culture ?? TextCulture.Default), text[1..]);
    }

    private static string Text<T>(string subject, T member, CultureInfo? culture)
        where T : struct, Enum =>
        NameTexts.ResourceManager.GetString($"{subject}_{member}", culture ?? TextCulture.Default)
        ?? throw new ArgumentOutOfRangeException(nameof(member), member, $"{subject} has no text for this member.");
}
