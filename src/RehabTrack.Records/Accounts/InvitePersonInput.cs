using RehabTrack.Records.Room;

namespace RehabTrack.Records.Accounts;

/// <summary>Whom to invite.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="PersonId">The person.</param>
/// <param name="SecretHash">SHA-256 of the secret, 64 lower-case hexadecimal digits.</param>
/// <param name="TakesSecondStep">Whether the person sets the second step up anew, having lost what shows the codes.</param>
public sealed record InvitePersonInput(Guid CommandId, Guid PersonId, string SecretHash, bool TakesSecondStep) : ICommand;
