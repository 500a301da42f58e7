using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;

namespace RehabTrack.Records.Horses;

/// <summary>Adds or changes a horse and the people beside it. A person who no longer stands beside it is kept with the date.</summary>
public sealed class SaveHorse(RecordsAccess access) : Command<SaveHorseInput, Saved>(access)
{
    private const int ChipLength = 15;
    private const int OldestAge = 60;

    private protected override Right Right => Right.ChangeHorses;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        SaveHorseInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        Checks checks = new();
        string name = checks.Name("name", input.Name);
        string? chip = Chip(checks, input.Microchip);
        string? use = checks.Line("use", input.Use);
        string? markings = checks.Text("markings", input.Markings);
        int? birthYear = input.BirthYear ?? input.BirthDate?.Year;
        Birth(checks, birthYear, input.BirthDate, session.Today);
        HorseRecord? horse = null;
        if (input.Id is { } id)
        {
            horse = await records.Horses.FirstOrDefaultAsync(record => record.Id == id && record.ArchivedAt == null, cancellation);
            if (horse is null)
            {
                return RecordProblems.NotFound("horse");
            }
        }

        if (chip is not null)
        {
            checks.Take(await HorseChips.TakenAsync(records, chip, input.Id, cancellation));
        }

        if (input.YardId is { } yardId && !await records.Yards.AnyAsync(yard => yard.Id == yardId, cancellation))
        {
            checks.Add(RecordProblems.NotFound("yardId"));
        }

        (HorseRelation Relation, string Field, Guid? PersonId)[] wanted =
        [
            (HorseRelation.Owner, "ownerId", input.OwnerId),
            (HorseRelation.Trainer, "trainerId", input.TrainerId),
            (HorseRelation.ReferringVet, "referringVetId", input.ReferringVetId),
        ];
        foreach ((_, string field, Guid? personId) in wanted)
        {
            if (personId is { } person && !await records.People.AnyAsync(record => record.Id == person, cancellation))
            {
                checks.Add(RecordProblems.NotFound(field));
            }
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        List<HorseLinkRecord> links = [];
        if (horse is null)
        {
            horse = new HorseRecord
            {
                Id = session.NewId(),
                Name = name,
                FoldedName = "",
                Search = "",
            };
            records.Horses.Add(horse);
        }
        else
        {
            links = await records.HorseLinks.Where(link => link.HorseId == horse.Id && link.Until == null).ToListAsync(cancellation);
            Guid? Kept(HorseRelation relation) =>
                links.OrderByDescending(link => link.From).FirstOrDefault(link => link.Relation == relation)?.PersonId;
            Conflict conflict = new Conflict()
                .Field("name", horse.Name, name)
                .Field("microchip", horse.Microchip, chip)
                .Field("birthYear", horse.BirthYear, birthYear)
                .Field("birthDate", horse.BirthDate, input.BirthDate)
                .Field("sex", horse.Sex, input.Sex)
                .Field("use", horse.Use, use)
                .Field("markings", horse.Markings, markings)
                .Field("yardId", horse.YardId, input.YardId)
                .Field("ownerId", Kept(HorseRelation.Owner), input.OwnerId)
                .Field("trainerId", Kept(HorseRelation.Trainer), input.TrainerId)
                .Field("referringVetId", Kept(HorseRelation.ReferringVet), input.ReferringVetId);
            if (horse.Version != input.Version && conflict.Any)
            {
                return conflict.Problems;
            }
        }

        horse.Name = name;
        horse.FoldedName = Folded.Of(name);
        horse.Search = HorseSearch.Of(name, chip);
        horse.Microchip = chip;
        horse.BirthYear = birthYear;
        horse.BirthDate = input.BirthDate;
        horse.Sex = input.Sex;
        horse.Use = use;
        horse.Markings = markings;
        horse.YardId = input.YardId;
        if (records.Entry(horse).State == EntityState.Unchanged)
        {
            records.Entry(horse).Property(record => record.Version).IsModified = true;
        }

        foreach ((HorseRelation relation, _, Guid? personId) in wanted)
        {
            Relate(session, horse.Id, links, relation, personId);
        }

        await records.SaveChangesAsync(cancellation);
        await LivingShares.RevokeOutlivedAsync(
            session,
            [.. links.Where(link => link.Relation == HorseRelation.Trainer).Select(link => link.PersonId)],
            cancellation
        );
        return new Saved(horse.Id, horse.Version);
    }

    private static void Relate(RecordsSession session, Guid horseId, List<HorseLinkRecord> links, HorseRelation relation, Guid? personId)
    {
        foreach (HorseLinkRecord gone in links.Where(link => link.Relation == relation && link.PersonId != personId))
        {
            gone.Until = session.Today;
        }

        if (personId is { } person && !links.Exists(link => link.Relation == relation && link.PersonId == person))
        {
            session.Records.HorseLinks.Add(
                new HorseLinkRecord
                {
                    Id = session.NewId(),
                    HorseId = horseId,
                    PersonId = person,
                    Relation = relation,
                    From = session.Today,
                }
            );
        }
    }

    private static string? Chip(Checks checks, string? text)
    {
        string? chip = text is null ? null : string.Concat(text.Where(letter => !char.IsWhiteSpace(letter)));
        if (string.IsNullOrEmpty(chip))
        {
            return null;
        }

        if (chip.Length != ChipLength || !chip.All(char.IsAsciiLetterOrDigit))
        {
            checks.Add(new Problem("microchip", "chip-unreadable", chip, RecordText.Of(ChipLength)));
        }

        return chip.ToUpperInvariant();
    }

    private static void Birth(Checks checks, int? year, DateOnly? date, DateOnly today)
    {
        if (year < today.Year - OldestAge || year > today.Year)
        {
            checks.Add(
                new Problem(
                    "birthYear",
                    "birth-year-out-of-range",
                    RecordText.Of(year.Value),
                    RecordText.Of(today.Year - OldestAge),
                    RecordText.Of(today.Year)
                )
            );
        }

        if (date > today)
        {
            checks.Add(new Problem("birthDate", "date-in-future", RecordText.Of(date.Value), RecordText.Of(today)));
        }

        if (date is { } birth && birth.Year != year)
        {
            checks.Add(new Problem("birthDate", "birth-date-not-in-year", RecordText.Of(birth), RecordText.Of(year)));
        }
    }
}
