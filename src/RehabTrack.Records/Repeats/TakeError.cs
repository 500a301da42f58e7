using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Repeats;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Repeats;

/// <summary>
/// Makes the cv of the practice's own repeats its setting, or goes back to the table. The summaries of all cases are renewed; where the
/// number comes from is kept with it.
/// </summary>
public sealed class TakeError(RecordsAccess access) : Command<TakeErrorInput, Saved>(access)
{
    // Figures travel to the page and back as text.
    private const double Rounding = 1e-9;

    private protected override Right Right => Right.ChangePractice;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        TakeErrorInput input,
        CancellationToken cancellation
    )
    {
        if (!ErrorCv.Sizes.Contains(input.Size))
        {
            return new Problem("size", "repeat-of-share");
        }

        PracticeRecord practice = await session.Records.Practices.SingleAsync(cancellation);
        if (practice.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        double cv = ErrorCv.Of(new MeasurementErrorSettings(), input.Size);
        ErrorOrigin? origin = null;
        if (input.ShownCv is { } shown)
        {
            RepeatStudy? study = (await RepeatRows.StudiesAsync(session.Records, cancellation)).FirstOrDefault(one =>
                one.Kind == RepeatKind.SameHorseAndDay && one.Size == input.Size
            );
            if (study is not { MayBecomeSetting: true, All: { Cv: { } own } error })
            {
                return new Problem("size", "repeats-too-few");
            }

            if (Math.Abs(own - shown) > Rounding)
            {
                return new Problem("size", "repeats-changed");
            }

            cv = own;
            origin = new ErrorOrigin(own, error.Subjects, error.DegreesOfFreedom, session.Today, session.Person.Name);
        }

        AnalysisSettings settings = SettingsStore.Of(practice);
        settings = settings with { Error = ErrorCv.With(settings.Error, input.Size, cv) };
        practice.SettingsJson = SettingsStore.OwnOf(settings);
        ErrorOrigins.Set(practice, input.Size, origin);
        await session.Records.SaveChangesAsync(cancellation);
        await ChangePractice.RenewAllAsync(session, settings, cancellation);
        return new Saved(practice.Id, practice.Version);
    }
}
