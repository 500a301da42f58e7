using Microsoft.Extensions.Configuration;
using RehabTrack.Records.Backups;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Hosting;

public sealed class BackupConfigurationTests
{
    [Fact]
    public void Nothing_said_makes_no_backups_and_keeps_the_numbers_of_the_table()
    {
        BackupSettings read = BackupConfiguration.Read(Said());

        Assert.Equal((null, new TimeOnly(2, 30), 14, 8), (read.Folder, read.At, read.KeepDaily, read.KeepWeekly));
    }

    [Fact]
    public void What_is_said_is_obeyed()
    {
        BackupSettings read = BackupConfiguration.Read(
            Said(("Backup:Folder", "copies"), ("Backup:At", "23:05"), ("Backup:KeepDaily", "3"), ("Backup:KeepWeekly", "0"))
        );

        Assert.Equal((Path.GetFullPath("copies"), new TimeOnly(23, 5), 3, 0), (read.Folder, read.At, read.KeepDaily, read.KeepWeekly));
    }

    [Theory]
    [InlineData("Backup:At", "half past two")]
    [InlineData("Backup:At", "2:30 pm")]
    [InlineData("Backup:KeepDaily", "-1")]
    [InlineData("Backup:KeepWeekly", "many")]
    public void What_cannot_be_read_stops_the_start_with_a_sentence(string setting, string value)
    {
        StartRefusedException refused = Assert.Throws<StartRefusedException>(() => BackupConfiguration.Read(Said((setting, value))));

        Assert.Contains(value, refused.Message, StringComparison.Ordinal);
        Assert.EndsWith(".", refused.Message, StringComparison.Ordinal);
    }

    private static IConfiguration Said(params (string Name, string Value)[] settings) =>
        new ConfigurationBuilder()
            .AddInMemoryCollection(settings.Select(setting => KeyValuePair.Create<string, string?>(setting.Name, setting.Value)))
            .Build();
}
