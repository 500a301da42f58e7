using RehabTrack.Web.Features.Horses;

namespace RehabTrack.Web.Tests.Features.Horses;

public sealed class PhotoHeaderTests
{
    // Written by hand after ISO/IEC 15948 (PNG), 5.2 and 11.2.2: signature, then IHDR with width and height.
    private static readonly byte[] Png =
    [
        0x89,
        0x50,
        0x4E,
        0x47,
        0x0D,
        0x0A,
        0x1A,
        0x0A,
        0,
        0,
        0,
        13,
        0x49,
        0x48,
        0x44,
        0x52,
        0,
        0,
        0x75,
        0x30,
        0,
        0,
        0x27,
        0x10,
        8,
        2,
        0,
        0,
        0,
    ];

    // After ITU-T T.81 (JPEG), B.2: SOI, an application segment, fill bytes, a progressive frame of 480 lines by 640.
    private static readonly byte[] Jpeg =
    [
        0xFF,
        0xD8,
        0xFF,
        0xE0,
        0,
        4,
        1,
        2,
        0xFF,
        0xFF,
        0xC2,
        0,
        17,
        8,
        0x01,
        0xE0,
        0x02,
        0x80,
        3,
        1,
        0x22,
        0,
        2,
        0x11,
        1,
        3,
        0x11,
        1,
    ];

    [Fact]
    public void A_png_says_its_size_before_it_is_decoded() =>
        Assert.Equal(new PhotoHeader("image/png", 30_000, 10_000), PhotoHeader.Read(Png));

    [Fact]
    public void A_jpeg_says_its_size_behind_other_segments() =>
        Assert.Equal(new PhotoHeader("image/jpeg", 640, 480), PhotoHeader.Read(Jpeg));

    [Fact]
    public void A_picture_that_is_cut_off_is_none()
    {
        for (int length = 0; length < 24; length++)
        {
            Assert.Null(PhotoHeader.Read(Png.AsSpan(0, length)));
        }

        for (int length = 0; length < 17; length++)
        {
            Assert.Null(PhotoHeader.Read(Jpeg.AsSpan(0, length)));
        }
    }

    [Theory]
    [InlineData("<svg xmlns=\"http://www.w3.org/2000/svg\"/>        ")]
    [InlineData("GIF89a............................")]
    [InlineData("<html><script>alert(1)</script></html>")]
    public void Anything_else_is_no_picture(string text) => Assert.Null(PhotoHeader.Read(System.Text.Encoding.ASCII.GetBytes(text)));

    [Fact]
    public void A_picture_without_lines_is_none()
    {
        byte[] flat = [.. Png];
        flat[18] = flat[19] = 0;
        Assert.Null(PhotoHeader.Read(flat));
    }
}
