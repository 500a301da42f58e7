using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Repeats;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Repeats;

/// <summary>Keeps repeat tracings: all of them, or none with all that is wrong. Yields how many.</summary>
public sealed class AddRepeats(RecordsAccess access) : Command<AddRepeatsInput, int>(access)
{
    private protected override Right Right => Right.EnterExaminations;

    private protected override async Task<Outcome<int>> WriteAsync(
        RecordsSession session,
        AddRepeatsInput input,
        CancellationToken cancellation
    )
    {
        Checks checks = new();
        if (input.Tracings.Count == 0)
        {
            checks.Add(new Problem("tracings", "repeats-none"));
        }

        for (int i = 0; i < input.Tracings.Count; i++)
        {
            checks.AddRange(RepeatRules.Check(input.Tracings[i], $"tracings[{RecordText.Of(i)}]"));
        }

        checks.Take(await RepeatRules.TooManyAsync(session.Records, input.Tracings.Count, cancellation));
        if (checks.Any)
        {
            return checks.Problems;
        }

        foreach (RepeatTracing tracing in input.Tracings)
        {
            session.Records.RepeatTracings.Add(
                new RepeatTracingRecord
                {
                    Id = session.NewId(),
                    Subject = tracing.Subject.Trim(),
                    Kind = tracing.Kind,
                    Size = tracing.Size,
                    Measurer = string.IsNullOrWhiteSpace(tracing.Measurer) ? null : tracing.Measurer.Trim(),
                    Value = tracing.Value,
                    EnteredById = session.Person.Id,
                    EnteredAt = session.Now,
                }
            );
        }

        await session.Records.SaveChangesAsync(cancellation);
        return input.Tracings.Count;
    }
}
