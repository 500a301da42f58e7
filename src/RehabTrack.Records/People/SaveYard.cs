using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.People;

/// <summary>Adds or changes a yard.</summary>
public sealed class SaveYard(RecordsAccess access) : Command<SaveYardInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeContacts;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        SaveYardInput input,
        CancellationToken cancellation
    )
    {
        Checks checks = new();
        string name = checks.Name("name", input.Name);
        string? phone = checks.Phone("phone", input.Phone);
        string? address = checks.Text("address", input.Address);
        if (checks.Any)
        {
            return checks.Problems;
        }

        YardRecord? yard;
        if (input.Id is { } id)
        {
            yard = await session.Records.Yards.FirstOrDefaultAsync(record => record.Id == id && record.ArchivedAt == null, cancellation);
            if (yard is null)
            {
                return RecordProblems.NotFound("yard");
            }

            Conflict conflict = new Conflict()
                .Field("name", yard.Name, name)
                .Field("phone", yard.Phone, phone)
                .Field("address", yard.Address, address);
            if (yard.Version != input.Version && conflict.Any)
            {
                return conflict.Problems;
            }
        }
        else
        {
            yard = new YardRecord
            {
                Id = session.NewId(),
                Name = name,
                FoldedName = "",
            };
            session.Records.Yards.Add(yard);
        }

        yard.Name = name;
        yard.FoldedName = Folded.Of(name);
        yard.Phone = phone;
        yard.Address = address;
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(yard.Id, yard.Version);
    }
}
