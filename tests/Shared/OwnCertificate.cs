using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace RehabTrack.Tests;

/// <summary>A certificate for this machine, good for a day, that nobody vouches for.</summary>
internal static class OwnCertificate
{
    /// <summary>Certificate and key in one PKCS #12 file without a password.</summary>
    public static byte[] Make()
    {
        using ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        CertificateRequest request = new("CN=127.0.0.1", key, HashAlgorithmName.SHA256);
        SubjectAlternativeNameBuilder names = new();
        names.AddIpAddress(IPAddress.Loopback);
        request.CertificateExtensions.Add(names.Build());
        DateTimeOffset now = DateTimeOffset.UtcNow;
        using X509Certificate2 certificate = request.CreateSelfSigned(now.AddHours(-1), now.AddDays(1));
        return certificate.Export(X509ContentType.Pkcs12);
    }
}
