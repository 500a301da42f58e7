using System.Text;
using RehabTrack.Exchange.Writing;

namespace RehabTrack.Exchange.Tests.Writing;

public sealed class TableWriterTests
{
    [Fact]
    public void Cells_that_a_spreadsheet_would_reckon_are_guarded_and_others_are_left_alone()
    {
        using MemoryStream stream = new();
        using (TableWriter table = new(stream, ["name", "say"]))
        {
            table.Write(["=1+1", "a,b"]);
            table.Write(["+1", "-1"]);
            table.Write(["@x", "\ty"]);
            table.Write(["plain", "two\nlines \"said\""]);
        }

        Assert.Equal(
            "\uFEFFname,say\n'=1+1,\"a,b\"\n'+1,'-1\n'@x,'\ty\nplain,\"two\nlines \"\"said\"\"\"\n",
            Encoding.UTF8.GetString(stream.ToArray()).ReplaceLineEndings("\n")
        );
    }
}
