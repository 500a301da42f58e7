using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Practices;

/// <summary>Reads the practice.</summary>
public sealed class GetPractice(RecordsAccess access) : UseCase<NoInput, PracticeView>(access)
{
    private protected override Right Right => Right.SeePractice;

    private protected override Task<Outcome<PracticeView>> RunAsync(
        RecordsSession session,
        NoInput input,
        CancellationToken cancellation
    ) => Task.FromResult<Outcome<PracticeView>>(PracticeViews.Of(session));
}
