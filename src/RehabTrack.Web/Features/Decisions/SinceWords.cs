using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Care;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Components;
using RehabTrack.Web.Components.Exercise;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Decisions;

/// <summary>What happened since the last signature, in sentences; plain logs are counted by the page.</summary>
public static class SinceWords
{
    /// <summary>The last signature, under a plan or a decision; null when nothing was signed.</summary>
    public static ExerciseLine? Last(ExerciseView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        return view.Lines.LastOrDefault(line => line.Entry is PlanSigned or DecisionSigned);
    }

    /// <summary>Whether a line is a day that was logged without a sign.</summary>
    public static bool IsPlainLog(ExerciseLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return line.Entry is DayLogged { Log.HasSign: false };
    }

    /// <summary>All of it, by date.</summary>
    /// <param name="view">The exercise of the horse.</param>
    /// <param name="cases">Its open cases.</param>
    /// <param name="care">Its treatments, medicines and signs.</param>
    public static IReadOnlyList<string> Of(ExerciseView view, IReadOnlyList<OpenCaseToday> cases, IReadOnlyList<CareView> care)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(cases);
        ArgumentNullException.ThrowIfNull(care);
        ExerciseLine? last = Last(view);
        Since since = new(view, last?.RecordedAt ?? DateTime.MinValue, last?.Number ?? 0);
        return
        [
            .. since
                .Examined(cases)
                .Concat(care.SelectMany(since.Cared))
                .Concat(cases.SelectMany(since.OfCase))
                .Concat(since.Missed(cases))
                .Concat(since.Written())
                .OrderBy(one => one.Date)
                .Select(one => one.Text),
        ];
    }

    private sealed class Since(ExerciseView view, DateTime at, int number)
    {
        // Without a signature everything is news.
        private readonly DateOnly day = at == DateTime.MinValue ? DateOnly.MinValue : Moments.DayOf(at, view.Practice.TimeZone);

        public IEnumerable<(DateOnly Date, string Text)> Examined(IReadOnlyList<OpenCaseToday> cases)
        {
            long signed = view
                .History.Entries.Where(entry => entry is PlanSigned or DecisionSigned)
                .Select(entry => entry.Order)
                .DefaultIfEmpty(long.MinValue)
                .Max();
            return view
                .History.Entries.OfType<ExaminationSigned>()
                .Where(entry => entry.Order > signed)
                .Select(entry => (entry.Date, $"{Figures.Date(entry.Date)}: {Say(DecisionPage.Examined, NameOf(cases, entry.CaseId))}."));
        }

        public IEnumerable<(DateOnly Date, string Text)> Cared(CareView care)
        {
            DateOnly today = view.Practice.Today;
            string what = CareSentences.Of(care.Entry);
            string days = Names.AsTitle(CareSentences.Days(care.Entry));
            if (care.EnteredAt > at || (care.Entry.From > day && care.Entry.From <= today))
            {
                yield return (care.Entry.From, Say(DecisionPage.SinceCare, days, what, care.EnteredBy));
                yield break;
            }

            if (care.Entry.Until is { } until && until != care.Entry.From && until >= day && until <= today)
            {
                yield return (until, Say(DecisionPage.SinceCareEnded, Figures.Date(until), what, care.EnteredBy));
            }

            if (care.CorrectedAt is { } corrected && corrected > at)
            {
                yield return (DayOf(corrected), Say(DecisionPage.SinceCareCorrected, days, what, care.CorrectedBy ?? ""));
            }
        }

        public IEnumerable<(DateOnly Date, string Text)> OfCase(OpenCaseToday open)
        {
            foreach (ExaminationCard card in open.Case.Examinations.Where(card => card.Amendments > 0 && card.WrittenAt > at))
            {
                DateOnly on = DayOf(card.WrittenAt);
                yield return (
                    on,
                    Say(
                        DecisionPage.SinceAmended,
                        Figures.Date(on),
                        Figures.Date(card.Date),
                        open.Name,
                        card.SignedBy ?? card.EnteredBy ?? ""
                    )
                );
            }

            foreach (LinkWordView word in open.Case.LinkWords)
            {
                if (word.SaidAt > at)
                {
                    DateOnly on = DayOf(word.SaidAt);
                    yield return (
                        on,
                        Say(DecisionPage.SinceLink, Figures.Date(on), Names.Of(word.Constraint.Kind), open.Name, word.SaidBy, word.Reason)
                    );
                }

                if (word.WithdrawnAt is { } back && back > at)
                {
                    DateOnly on = DayOf(back);
                    yield return (
                        on,
                        Say(DecisionPage.SinceLinkBack, Figures.Date(on), open.Name, word.WithdrawnBy ?? "", word.WithdrawnReason ?? "")
                    );
                }
            }
        }

        public IEnumerable<(DateOnly Date, string Text)> Missed(IReadOnlyList<OpenCaseToday> cases) =>
            view
                .Missed.Where(missed => missed.Date >= day)
                .Select(missed =>
                    (missed.Date, Say(DecisionPage.SinceMissed, Figures.Date(missed.Date), NameOf(cases, missed.CaseId.ToString())))
                );

        public IEnumerable<(DateOnly Date, string Text)> Written() =>
            view.Lines.Where(line => line.Number > number && !IsPlainLog(line)).Select(line => (line.Date, LineWords.Of(line)));

        private DateOnly DayOf(DateTime moment) => Moments.DayOf(moment, view.Practice.TimeZone);
    }

    private static string NameOf(IReadOnlyList<OpenCaseToday> cases, string caseId) =>
        cases.FirstOrDefault(one => string.Equals(one.Case.Id.ToString(), caseId, StringComparison.OrdinalIgnoreCase))?.Name ?? "";

    private static string Say(string text, params ReadOnlySpan<object?> arguments) => string.Format(TextCulture.Default, text, arguments);
}
