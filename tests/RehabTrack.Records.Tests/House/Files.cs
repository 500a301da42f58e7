using RehabTrack.Exchange;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Tests.House;

/// <summary>Cases as a file gives them.</summary>
internal static class Files
{
    public static CaseFile Case(
        string label,
        HorseIdentity horse,
        params (string Date, (double Level, double Ligament, double Lesion)[] Levels)[] examinations
    ) =>
        new(
            label,
            horse,
            new CaseCourse
            {
                Id = label,
                Limb = Limb.LeftHind,
                Structure = Structure.SuspensoryLigament,
                Landmark = Landmark.PointOfHock,
                Onset = new DateOnly(2026, 1, 5),
                Examinations =
                [
                    .. examinations.Select(examination => new Examination
                    {
                        Id = examination.Date,
                        Date = DateOnly.Parse(examination.Date, System.Globalization.CultureInfo.InvariantCulture),
                        State = ExaminationState.History,
                        Readings =
                        [
                            .. examination.Levels.Select(
                                (level, row) =>
                                    new Reading
                                    {
                                        Id = $"{row + 2}",
                                        Part = Part.Body,
                                        Level = new Centimetres(level.Level),
                                        LigamentArea = new SquareCentimetres(level.Ligament),
                                        LesionArea = LesionArea.Measured(new SquareCentimetres(level.Lesion)),
                                        Measurer = "E. Marrow",
                                    }
                            ),
                        ],
                    }),
                ],
            }
        );

    /// <summary>The ordinary course: three levels at three dates, healing.</summary>
    public static CaseFile Healing(string label, HorseIdentity horse) =>
        Case(
            label,
            horse,
            ("2026-03-01", [(10, 1.4, 0), (12, 1.5, 0.6), (14, 1.3, 0)]),
            ("2026-05-01", [(10, 1.4, 0), (12, 1.5, 0.35), (14, 1.3, 0)]),
            ("2026-07-01", [(10, 1.4, 0), (12, 1.5, 0.18), (14, 1.3, 0)])
        );

    /// <summary>Changes one reading of one examination.</summary>
    public static CaseFile With(this CaseFile file, string examination, int reading, Func<Reading, Reading> change) =>
        file with
        {
            Course = file.Course with
            {
                Examinations =
                [
                    .. file.Course.Examinations.Select(entered =>
                        entered.Id == examination
                            ? entered with
                            {
                                Readings = [.. entered.Readings.Select((row, at) => at == reading ? change(row) : row)],
                            }
                            : entered
                    ),
                ],
            },
        };

    /// <summary>The folder of the demo's files, found upwards from the tests.</summary>
    public static string Seed
    {
        get
        {
            DirectoryInfo? folder = new(AppContext.BaseDirectory);
            while (folder is not null && !Directory.Exists(Path.Combine(folder.FullName, "seed")))
            {
                folder = folder.Parent;
            }

            return Path.Combine(folder!.FullName, "seed");
        }
    }

    public static IReadOnlyList<CaseFile> ReadSeed(IEnumerable<string> names) =>
        [
            .. names.SelectMany(name =>
            {
                using FileStream stream = File.OpenRead(Path.Combine(Seed, name));
                return SheetImport.Read(stream, today: null).Cases;
            }),
        ];
}
