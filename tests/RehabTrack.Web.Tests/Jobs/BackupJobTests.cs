using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using RehabTrack.Records.Backups;
using RehabTrack.Records.Room;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Start;
using RehabTrack.Web.Jobs;
using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.Jobs;

/// <summary>The job that makes the scheduled backups, on a real database, by a clock that is moved by hand.</summary>
public sealed class BackupJobTests : IAsyncLifetime
{
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    private readonly string _parent = Directory.CreateTempSubdirectory("rehabtrack-job-").FullName;

    // Ten in the morning in Vienna; half past two at night there is half past one UTC.
    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2026, 11, 24, 9, 0, 0, TimeSpan.Zero));

    private string Copies => Path.Combine(_parent, "copies");

    public async Task InitializeAsync()
    {
        Directory.CreateDirectory(Path.Combine(_parent, "data"));
        await MigratedFolder.FillAsync(Path.Combine(_parent, "data"));
        await using ServiceProvider services = Services();
        await services.GetRequiredService<SqliteStart>().RunAsync();
        await FirstVet.FoundAsync(services);
    }

    public Task DisposeAsync()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(_parent, recursive: true);
        return Task.CompletedTask;
    }

    [Fact]
    public async Task One_is_made_at_the_set_time_of_the_practices_clock_and_not_before()
    {
        await using Running job = await StartAsync();
        Assert.Equal(["rehabtrack-20261124T090000Z.zip"], Names());

        await job.PassAsync(TimeSpan.FromHours(16) + TimeSpan.FromMinutes(29));
        Assert.Single(Names());

        await job.PassAsync(Minute);
        Assert.Equal(["rehabtrack-20261124T090000Z.zip", "rehabtrack-20261125T013000Z.zip"], Names());

        await job.PassAsync(TimeSpan.FromHours(1));
        Assert.Equal(2, Names().Length);
    }

    [Fact]
    public async Task One_that_was_missed_while_the_machine_was_off_is_made_at_the_next_start()
    {
        await using (await StartAsync())
        {
            Assert.Single(Names());
        }

        // Off over two nights.
        _time.Advance(TimeSpan.FromHours(47));
        await using Running again = await StartAsync();

        Assert.Equal(["rehabtrack-20261124T090000Z.zip", "rehabtrack-20261126T080000Z.zip"], Names());
    }

    [Fact]
    public async Task One_that_fails_is_tried_again_after_the_pause_and_not_before()
    {
        await using Running job = await StartAsync();
        await job.PassAsync(TimeSpan.FromHours(16));
        await using (FileStream other = new(Path.Combine(Copies, "backup.lock"), FileMode.Open, FileAccess.ReadWrite, FileShare.None))
        {
            await job.PassAsync(TimeSpan.FromMinutes(30));
            Assert.Equal("backup-folder-busy", Assert.Single(job.Backups.Last!.Problems).Code);
        }

        await job.PassAsync(TimeSpan.FromMinutes(59));
        Assert.Single(Names());

        await job.PassAsync(Minute);
        Assert.Equal(["rehabtrack-20261124T090000Z.zip", "rehabtrack-20261125T023000Z.zip"], Names());
    }

    [Fact]
    public async Task Older_ones_go_and_as_many_stay_as_are_to_be_kept()
    {
        await using Running job = await StartAsync();
        for (int day = 0; day < 4; day++)
        {
            await job.PassAsync(TimeSpan.FromDays(1));
        }

        Assert.Equal(["rehabtrack-20261127T090000Z.zip", "rehabtrack-20261128T090000Z.zip"], Names());
    }

    private string[] Names() =>
        Directory.Exists(Copies) ? [.. Directory.GetFiles(Copies, "*.zip").Select(Path.GetFileName).Order(StringComparer.Ordinal)!] : [];

    private ServiceProvider Services()
    {
        ServiceCollection services = new();
        services.AddSingleton<TimeProvider>(_time);
        services.AddSingleton(
            new BackupSettings
            {
                Folder = Copies,
                At = new TimeOnly(2, 30),
                KeepDaily = 2,
                KeepWeekly = 0,
                RetryAfter = TimeSpan.FromHours(1),
            }
        );
        services.AddRecords();
        services.AddSqliteRecords(Path.Combine(_parent, "data"));
        return services.BuildServiceProvider();
    }

    /// <summary>Starts the job, and waits until it has looked once.</summary>
    private async Task<Running> StartAsync()
    {
        ServiceProvider services = Services();
        LookedAt backups = new(services.GetRequiredService<IBackupKeeper>(), _time);
        BackupJob job = new(backups, _time, NullLogger<BackupJob>.Instance);
        await job.StartAsync(default);
        Running running = new(services, backups, job, _time);
        await backups.LookedAsync();
        return running;
    }

    private sealed class Running(ServiceProvider services, LookedAt backups, BackupJob job, FakeTimeProvider time) : IAsyncDisposable
    {
        public IBackupKeeper Backups => backups;

        /// <summary>Lets time pass in one leap, and waits until the job has looked at the end of it.</summary>
        public async Task PassAsync(TimeSpan span)
        {
            time.Advance(span);
            await backups.LookedAsync();
        }

        public async ValueTask DisposeAsync()
        {
            await job.StopAsync(default);
            job.Dispose();
            await services.DisposeAsync();
        }
    }

    /// <summary>Knows when it was asked last whether a backup is due, and answered.</summary>
    private sealed class LookedAt(IBackupKeeper backups, TimeProvider time) : IBackupKeeper
    {
        private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);
        private readonly SemaphoreSlim _looked = new(0);
        private DateTimeOffset _last = DateTimeOffset.MinValue;

        public BackupAttempt? Last => backups.Last;

        public IReadOnlyList<BackupCopy> List() => backups.List();

        public Task<Outcome<BackupCopy>> MakeAsync(CancellationToken cancellation) => backups.MakeAsync(cancellation);

        public async Task<Outcome<BackupCopy>?> MakeDueAsync(CancellationToken cancellation)
        {
            DateTimeOffset asked = time.GetUtcNow();
            try
            {
                return await backups.MakeDueAsync(cancellation);
            }
            finally
            {
                _last = asked;
                _looked.Release();
            }
        }

        /// <summary>Waits until it was asked at the present time, and answered; a look of before the last leap does not count.</summary>
        public async Task LookedAsync()
        {
            while (_last < time.GetUtcNow())
            {
                Assert.True(await _looked.WaitAsync(Patience), "The job does not look any more.");
            }
        }
    }
}
