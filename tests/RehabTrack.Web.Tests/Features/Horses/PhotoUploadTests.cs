using System.Buffers.Binary;
using System.Net;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Horses;
using RehabTrack.Web.Features.Horses;
using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.Features.Horses;

/// <summary>A picture is refused by what its head says, before anything decodes it (OWASP ASVS 5.0, 5.2.6).</summary>
public sealed class PhotoUploadTests(RunningApp app) : IClassFixture<RunningApp>
{
    [Theory]
    [InlineData(5_000, 5_000, null)]
    [InlineData(30_000, 30_000, PhotoUpload.TooManyPixels)]
    [InlineData(int.MaxValue, int.MaxValue, PhotoUpload.TooManyPixels)]
    public async Task A_picture_of_more_pixels_than_allowed_is_refused_however_few_bytes_it_has(int width, int height, string? code)
    {
        Guid horse = (
            await app
                .Services.GetRequiredService<SaveHorse>()
                .ExecuteAsync(app.Vet, new SaveHorseInput { CommandId = Guid.NewGuid(), Name = $"Bay {width}" })
        )
            .Value
            .Id;
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        using MultipartFormDataContent form = new()
        {
            { new StringContent(await RunningApp.TokenAsync(browser, "/account")), "__RequestVerificationToken" },
            { new ByteArrayContent(Png(width, height)), "photo", "bay.png" },
        };

        using HttpResponseMessage answer = await browser.PostAsync($"/horses/{horse}/photo", form);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal(code is not null, answer.Headers.Location!.OriginalString.Contains(code ?? "photo-", StringComparison.Ordinal));
        using HttpResponseMessage kept = await browser.GetAsync($"/horses/{horse}/photo");
        Assert.Equal(code is null ? HttpStatusCode.OK : HttpStatusCode.NotFound, kept.StatusCode);
    }

    /// <summary>Signature and head of a PNG (ISO/IEC 15948, 5.2 and 11.2.2); nothing behind them.</summary>
    private static byte[] Png(int width, int height)
    {
        byte[] png = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 13, .. "IHDR"u8, 0, 0, 0, 0, 0, 0, 0, 0, 8, 2, 0, 0, 0];
        BinaryPrimitives.WriteInt32BigEndian(png.AsSpan(16), width);
        BinaryPrimitives.WriteInt32BigEndian(png.AsSpan(20), height);
        return png;
    }
}
