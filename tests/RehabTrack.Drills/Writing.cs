using System.Globalization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Room;

namespace RehabTrack.Drills;

/// <summary>What the drills write: examinations whose every row carries the same number, so that a half one shows.</summary>
internal static class Writing
{
    public const int Rows = 6;

    public static async Task<Guid> HorseAsync(DrillHouse house, string name) => (
            await house
                .Get<SaveHorse>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveHorseInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        Name = name,
                        BirthDate = new DateOnly(2015, 4, 2),
                    }
                )
        ).Value.Id;

    public static async Task<Guid> CaseAsync(DrillHouse house, Guid horse) => (
            await house
                .Get<OpenCase>()
                .ExecuteAsync(
                    house.Vet,
                    new OpenCaseInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        HorseId = horse,
                        Limb = Limb.LeftHind,
                        Structure = Structure.SuspensoryLigament,
                        Onset = new DateOnly(2026, 1, 1),
                    }
                )
        ).Value.Id;

    public static async Task<Saved> BeginAsync(DrillHouse house, Guid injury) =>
        (
            await house
                .Get<StartExamination>()
                .ExecuteAsync(
                    house.Vet,
                    new StartExaminationInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        CaseId = injury,
                        FromLast = false,
                    }
                )
        ).Value;

    /// <summary>An examination that carries a number in its note and in every row.</summary>
    public static ExaminationContent Content(int number, int rows = Rows, string more = "")
    {
        string mark = number.ToString(CultureInfo.InvariantCulture);
        return new ExaminationContent
        {
            Date = new DateOnly(2026, 3, 1),
            Note = mark,
            Readings =
            [
                .. Enumerable
                    .Range(0, rows)
                    .Select(row => new DraftReading(
                        null,
                        new ReadingDraft
                        {
                            Part = Part.Body,
                            LevelCm = 8 + (row / 2.0),
                            LigamentAreaCm2 = 1.5,
                            LesionAreaCm2 = 0.1,
                            Note = mark + more,
                        }
                    )),
            ],
        };
    }

    /// <summary>The number an examination carries; a sentence when its parts do not agree.</summary>
    public static (int? Number, string? Torn) NumberOf(ExaminationContent content, int rows = Rows)
    {
        if (content.Note is null && content.Readings.Count == 0)
        {
            // Begun, and never saved.
            return (null, null);
        }

        string[] marks =
        [
            .. content
                .Readings.Select(row => (row.Values.Note ?? "").Split(' ')[0])
                .Append(content.Note ?? "")
                .Distinct(StringComparer.Ordinal),
        ];
        return content.Readings.Count == rows && marks.Length == 1
            ? (int.Parse(marks[0], CultureInfo.InvariantCulture), null)
            : (null, $"{content.Readings.Count} rows, marks {string.Join('/', marks)}");
    }
}
