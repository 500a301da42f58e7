using System.Globalization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Benchmarks.Scenes;

/// <summary>Invented cases, the same at every run: a lesion that heals, tape error, measurement error, a missed level now and then.</summary>
internal static class MadeCases
{
    private const double FirstLevelCm = 8;
    private const double SpacingCm = 2;
    private static readonly DateOnly First = new(2025, 1, 15);

    /// <summary>A case.</summary>
    /// <param name="number">The number it is made of.</param>
    /// <param name="examinations">How many examinations.</param>
    /// <param name="levels">How many levels each.</param>
    /// <param name="isWhole">Whether no level is missed.</param>
    public static CaseFile Make(int number, int examinations, int levels, bool isWhole = false)
    {
        Random random = new(number);
        string name = string.Create(CultureInfo.InvariantCulture, $"Horse {number}");
        string label = string.Create(CultureInfo.InvariantCulture, $"{name} LH");
        return new CaseFile(
            label,
            new HorseIdentity(name, string.Create(CultureInfo.InvariantCulture, $"999{number:D12}"), null),
            new CaseCourse
            {
                Id = label,
                Limb = Limb.LeftHind,
                Structure = Structure.SuspensoryLigament,
                Landmark = Landmark.PointOfHock,
                Onset = First.AddDays(-20),
                Examinations =
                [
                    .. Enumerable.Range(0, examinations).Select(index => MakeExamination(random, number, index, levels, isWhole)),
                ],
            }
        );
    }

    /// <summary>The levels of an examination.</summary>
    public static double[] LevelsOf(Examination examination) => [.. examination.Readings.Select(reading => reading.Level.Position.Value)];

    /// <summary>The cases as the sheet a user would write.</summary>
    public static void Write(TextWriter writer, int cases, int examinations, int levels)
    {
        writer.WriteLine(
            "case,horse,microchip,limb,structure,part,landmark,onset_date,examination_date,measurer,level_cm,ligament_area_cm2,lesion_area_cm2"
        );
        for (int number = 1; number <= cases; number++)
        {
            CaseFile file = Make(number, examinations, levels);
            foreach (Examination examination in file.Course.Examinations)
            {
                foreach (Reading reading in examination.Readings)
                {
                    writer.WriteLine(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{file.Label},{file.Horse.Name},{file.Horse.Microchip},LH,suspensory-ligament,{(reading.Part == Part.Origin ? "origin" : "body")},point-of-hock,{file.Course.Onset:yyyy-MM-dd},{examination.Date:yyyy-MM-dd},AB,{reading.Level.Position.Value:0.0},{reading.LigamentArea!.Value.Value:0.00},{reading.LesionArea.MeasuredArea!.Value.Value:0.00}"
                        )
                    );
                }
            }
        }
    }

    private static Examination MakeExamination(Random random, int number, int index, int levels, bool isWhole)
    {
        DateOnly date = First.AddDays(60 * index);
        double shift = index == 0 ? 0 : 0.6 * Normal(random);
        double left = Math.Exp(-0.3 * index);
        List<Reading> readings = [];
        double last = 0;
        for (int level = 0; level < levels; level++)
        {
            double place = FirstLevelCm + (SpacingCm * level);
            double tape = Math.Max(last + 0.5, Math.Round(place + shift + (0.7 * Normal(random)), 1));
            double ligament = 1.3 * Math.Exp(0.07 * Normal(random));
            double share = 0.3 * Math.Exp(-Math.Pow((level - (levels / 2.0)) / (levels / 5.0), 2));
            double lesion = Math.Max(0, Math.Round(1.3 * share * left * Math.Exp(0.12 * Normal(random)), 2));
            bool missed = random.NextDouble() < 0.05;
            if (missed && !isWhole && readings.Count > 0)
            {
                continue;
            }

            last = tape;
            readings.Add(
                new Reading
                {
                    Id = string.Create(CultureInfo.InvariantCulture, $"{number}-{index}-{level}"),
                    Part = level < 2 ? Part.Origin : Part.Body,
                    Level = new Centimetres(tape),
                    LigamentArea = new SquareCentimetres(Math.Round(ligament, 2)),
                    LesionArea = LesionArea.Measured(new SquareCentimetres(lesion)),
                    Measurer = "AB",
                }
            );
        }

        return new Examination
        {
            Id = date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            Date = date,
            State = ExaminationState.History,
            Readings = readings,
        };
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
