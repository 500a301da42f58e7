namespace RehabTrack.Web.Tests.Walk;

/// <summary>Who stands beside a horse.</summary>
internal sealed record HorsePeopleIds(Guid Owner, Guid Trainer, Guid ReferringVet);
