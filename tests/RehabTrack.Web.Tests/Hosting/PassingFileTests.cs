using System.Text;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Hosting;

public sealed class PassingFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("rehabtrack-passing-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task It_is_the_owners_alone_from_its_first_byte_and_gone_when_it_is_closed()
    {
        await using (FileStream file = PassingFile.Create(_folder))
        {
            string path = Assert.Single(Directory.GetFiles(_folder));
            if (!OperatingSystem.IsWindows())
            {
                Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
            }

            await file.WriteAsync(Encoding.UTF8.GetBytes("what is passed on"));
        }

        Assert.Empty(Directory.GetFiles(_folder));
    }
}
