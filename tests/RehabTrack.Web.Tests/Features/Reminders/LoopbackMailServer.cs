using System.Buffers;
using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using MimeKit;
using SmtpServer;
using SmtpServer.Authentication;
using SmtpServer.Mail;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace RehabTrack.Web.Tests.Features.Reminders;

/// <summary>A real SMTP server on a free loopback port. It takes mail from whoever knows the password, but to nobody at refused.example.</summary>
/// <remarks>It can seal the way with a certificate that nobody vouches for.</remarks>
internal sealed class LoopbackMailServer : IAsyncDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly TaskCompletionSource _first = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Task _running;

    public LoopbackMailServer(bool asksPassword = false, bool seals = false)
    {
        Port = FreePort();
        ISmtpServerOptions options = new SmtpServerOptionsBuilder()
            .ServerName("localhost")
            .Endpoint(endpoint =>
            {
                endpoint
                    .Endpoint(new IPEndPoint(IPAddress.Loopback, Port))
                    .AllowUnsecureAuthentication()
                    .AuthenticationRequired(asksPassword);
                if (seals)
                {
                    endpoint.Certificate(X509CertificateLoader.LoadPkcs12(OwnCertificate.Make(), null));
                }
            })
            .Build();
        SmtpServer.ComponentModel.ServiceProvider services = new();
        services.Add(new Store(Taken, _first));
        services.Add((IMailboxFilterFactory)new DelegatingMailboxFilterFactory(_ => new Filter()));
        services.Add((IUserAuthenticatorFactory)new DelegatingUserAuthenticatorFactory(_ => new Door()));
        _running = new SmtpServer.SmtpServer(options, services).StartAsync(_stop.Token);
    }

    public int Port { get; }

    public ConcurrentQueue<MimeMessage> Taken { get; } = new();

    /// <summary>Ends when the first letter was taken.</summary>
    public Task FirstTaken => _first.Task;

    public static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        await _running;
        _stop.Dispose();
    }

    private sealed class Store(ConcurrentQueue<MimeMessage> taken, TaskCompletionSource first) : MessageStore
    {
        public override async Task<SmtpResponse> SaveAsync(
            ISessionContext context,
            IMessageTransaction transaction,
            ReadOnlySequence<byte> buffer,
            CancellationToken cancellationToken
        )
        {
            using MemoryStream content = new(buffer.ToArray());
            taken.Enqueue(await MimeMessage.LoadAsync(content, cancellationToken));
            first.TrySetResult();
            return SmtpResponse.Ok;
        }
    }

    private sealed class Filter : MailboxFilter
    {
        public override Task<bool> CanDeliverToAsync(
            ISessionContext context,
            IMailbox to,
            IMailbox from,
            CancellationToken cancellationToken
        ) => Task.FromResult(to.Host != "refused.example");
    }

    private sealed class Door : UserAuthenticator
    {
        public override Task<bool> AuthenticateAsync(
            ISessionContext context,
            string user,
            string password,
            CancellationToken cancellationToken
        ) => Task.FromResult(user == "practice" && password == "correct");
    }
}
