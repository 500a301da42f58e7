namespace RehabTrack.Rechecks.Exercise;

/// <summary>A week of effective time in a step: its work is the same on every day of it.</summary>
/// <param name="FirstDay">Effective days from the place where the preview starts to its first day, from 0.</param>
/// <param name="Days">Its length in days, 1 to 7; less than 7 where the step ends, or the preview starts, within the week.</param>
/// <param name="Place">Where the horse stands on its first day.</param>
/// <param name="Work">What the plan's row says, with the caps put on.</param>
/// <param name="Gates">How many gates must have been passed since the start of the preview; 0 is the stretch that a signature covers.</param>
public sealed record PlanWeek(int FirstDay, int Days, PlanPlace Place, Work Work, int Gates);
