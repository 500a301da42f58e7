using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Overview;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.House;
using RehabTrack.Records.Watch;

namespace RehabTrack.Records.Tests.Start;

public sealed class LoadDemoTests
{
    [Fact]
    public async Task The_demo_is_loaded_once_shifted_to_today_with_its_signed_examinations_its_due_dates_and_its_verdicts()
    {
        await using RecordsHouse house = RecordsHouse.Closed();
        house.Time.SetUtcNow(new DateTimeOffset(2027, 2, 10, 7, 0, 0, TimeSpan.Zero));
        await house.Get<SqliteStart>().RunAsync();
        DemoDefinition demo;
        await using (FileStream stream = File.OpenRead(Path.Combine(Files.Seed, "practice.json")))
        {
            demo = DemoDefinition.Read(stream);
        }

        IReadOnlyList<DemoPlan> plans;
        await using (FileStream stream = File.OpenRead(Path.Combine(Files.Seed, "exercise.json")))
        {
            plans = DemoPlan.Read(stream);
        }

        IReadOnlyList<CaseFile> files = Files.ReadSeed(demo.Imports);
        Actor vet = await house.Get<LoadDemo>().RunAsync(demo, files, plans);
        int changes = await house.LookAsync(records => records.Changes.CountAsync(), vet.PracticeId);
        Actor again = await house.Get<LoadDemo>().RunAsync(demo, files, plans);

        Assert.Equal(vet, again);
        Assert.Equal(changes, await house.LookAsync(records => records.Changes.CountAsync(), vet.PracticeId));
        HorsePage horses = (await house.Get<FindHorses>().ExecuteAsync(vet, new FindHorsesInput())).Value;
        Assert.Equal(demo.Horses.Count, horses.Total);
        Assert.Equal(demo.Cases.Count, horses.Rows.Sum(row => row.OpenCases.Count));
        CaseRow[] cases = [.. horses.Rows.SelectMany(row => row.OpenCases)];
        int shift = new DateOnly(2027, 2, 10).DayNumber - demo.AnchorDate.DayNumber;
        foreach (CaseRow row in cases)
        {
            CaseFile file = files.First(file => file.Label == row.Label);
            Assert.Equal(file.Course.Examinations.Max(examination => examination.Date).AddDays(shift), row.Summary!.LastExamination);
            Assert.Equal(file.Course.Examinations.Count, row.Summary.ExaminationCount);
        }

        Assert.Equal(Verdict.Healing, cases.First(row => row.Label == "Quillon LH body").Summary!.Verdict);
        Assert.Equal(Verdict.Stalled, cases.First(row => row.Label == "Tansy Fathom RH proximal").Summary!.Verdict);
        Assert.Equal(Verdict.NotYetReadable, cases.First(row => row.Label == "Linnet Minor LF body").Summary!.Verdict);
        OverviewView overview = (await house.Get<GetOverview>().ExecuteAsync(vet, NoInput.Value)).Value;
        Assert.True(overview.OverdueCount > 0);
        StandingPage standing = (await house.Get<ListStanding>().ExecuteAsync(vet, 1)).Value;
        Assert.Contains(standing.Rows, row => row.Cases.Any(injury => injury.Label == "Pepperwick RF medial branch"));
        CaseView quillon = (await house.Get<GetCase>().ExecuteAsync(vet, cases.First(row => row.Label == "Quillon LH body").Id)).Value;
        Assert.Equal(ExaminationState.History, quillon.Examinations[0].State);
        Assert.Equal(ExaminationState.Signed, quillon.Examinations[^1].State);
        Assert.Equal("Tamsin Orrel", quillon.Examinations[^1].SignedBy);
        Assert.Equal(quillon.Examinations[^1].Date, PracticeTime.DateOf(quillon.Examinations[^1].SignedAt!.Value, "Europe/London"));
        Dictionary<string, Permit> permits = [];
        foreach (HorseRow horse in horses.Rows)
        {
            ExerciseView exercise = (await house.Get<GetExercise>().ExecuteAsync(vet, horse.Id)).Value;
            permits.Add(horse.Name, exercise.Today);
            Assert.All(exercise.Decisions, decision => Assert.NotNull(decision.Release));
        }

        Assert.Equal(
            [PermitState.Live, PermitState.Held, PermitState.Held, PermitState.Stopped, PermitState.NothingSigned],
            new[] { "Quillon", "Tansy Fathom", "Old Saltmarsh", "Pepperwick", "Ironbell" }.Select(name => permits[name].State)
        );
        Assert.Equal(new OutingMinutes(20, 25, 2), permits["Quillon"].Work.Outing);
        Assert.Equal((20, 0), (permits["Tansy Fathom"].Work.Outing.Walk, permits["Tansy Fathom"].Work.Outing.Trot));
        BoardView board = (await house.Get<GetBoard>().ExecuteAsync(vet, new BoardInput())).Value;
        Assert.Equal(
            (new DateOnly(2027, 2, 13), "Tamsin Orrel"),
            board.Rows.Where(row => row.HorseName == "Quillon").Select(row => (row.Booking!.Date, row.Booking.Vet)).Single()
        );
        Assert.Equal(CallOutcome.LeftMessage, board.Rows.Single(row => row.HorseName == "Brimble Hob").LastCall!.Outcome);
        Assert.True(Assert.Single(board.Covers).Holds(new DateOnly(2027, 2, 10)));
        IReadOnlyList<Actor> doors = await house.Get<SignInDoor>().ListAsync();
        Assert.Equal(Role.Vet, doors[0].Role);
        Assert.Superset(
            new HashSet<Role> { Role.Vet, Role.Assistant, Role.Trainer, Role.Owner },
            doors.Select(actor => actor.Role).ToHashSet()
        );
    }
}
