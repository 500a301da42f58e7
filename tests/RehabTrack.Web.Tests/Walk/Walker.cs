namespace RehabTrack.Web.Tests.Walk;

/// <summary>Who walks.</summary>
internal enum Walker
{
    /// <summary>Without a session.</summary>
    Nobody,

    Administrator,
    Vet,
    Assistant,
    Trainer,
    Owner,
    ReferringVet,

    /// <summary>A vet of another practice in the same database.</summary>
    Stranger,
}
