using System.Diagnostics.CodeAnalysis;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Antiforgery;

namespace RehabTrack.Web.Hosting;

/// <summary>
/// A posted form whose antiforgery token was looked at, or the reason why there is none. Endpoints read their forms only through it;
/// the framework's own check throws where a person should get a sentence.
/// </summary>
public sealed class CheckedForm
{
    private CheckedForm(IFormCollection? form, IResult? refusal, bool tooLarge)
    {
        Form = form;
        Refusal = refusal;
        IsTooLarge = tooLarge;
    }

    /// <summary>The form; null when it was refused or too large.</summary>
    public IFormCollection? Form { get; }

    /// <summary>What to answer when the token was missing or foreign; null otherwise.</summary>
    public IResult? Refusal { get; }

    /// <summary>Whether the body was larger than the endpoint allows.</summary>
    public bool IsTooLarge { get; }

    /// <summary>Whether there is a form to work with.</summary>
    [MemberNotNullWhen(true, nameof(Form))]
    public bool IsGood => Form is not null;

    /// <summary>
    /// The command id of what the form asks for. The same form sent twice with the same file is one wish; another file, chosen on a page that
    /// was gone back to, is another.
    /// </summary>
    /// <param name="content">The file that came along.</param>
    public Guid CommandOf(ReadOnlySpan<byte> content)
    {
        if (!Guid.TryParse(Form?[FormFields.Command], out Guid form))
        {
            return Guid.CreateVersion7();
        }

        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(form.ToByteArray());
        hash.AppendData(content);
        return new Guid(hash.GetHashAndReset().AsSpan(0, 16));
    }

    /// <summary>Reads and checks.</summary>
    public static async Task<CheckedForm> ReadAsync(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (!context.Request.HasFormContentType)
        {
            return Refused();
        }

        try
        {
            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
            IAntiforgery antiforgery = context.RequestServices.GetRequiredService<IAntiforgery>();
            return await antiforgery.IsRequestValidAsync(context) ? new CheckedForm(form, null, false) : Refused();
        }
        catch (Exception problem) when (problem is InvalidDataException or BadHttpRequestException)
        {
            return new CheckedForm(null, null, true);
        }
    }

    private static CheckedForm Refused() => new(null, Results.StatusCode(StatusCodes.Status400BadRequest), false);
}
