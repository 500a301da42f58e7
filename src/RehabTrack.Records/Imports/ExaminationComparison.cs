using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Imports;

/// <summary>Compares an examination of a file with the one that is kept. What the file leaves empty says nothing.</summary>
internal static class ExaminationComparison
{
    public static PlannedExamination Of(Examination file, ExaminationRecord kept, IReadOnlyList<ReadingRecord> readings, bool amend)
    {
        List<FieldDifference> differences = [];
        ExaminationContent content = ExaminationStore.ContentOf(kept, readings);
        ExaminationContent merged = content with
        {
            Stance = file.Stance,
            Examiner = file.Examiner ?? content.Examiner,
            Transducer = file.Transducer ?? content.Transducer,
            FixedPoints =
            [
                .. file.FixedPoints,
                .. content.FixedPoints.Where(kept => file.FixedPoints.All(point => point.Kind != kept.Kind)),
            ],
        };
        Differ(differences, "stance", content.Stance, merged.Stance);
        Differ(differences, "examiner", content.Examiner, merged.Examiner);
        Differ(differences, "transducer", content.Transducer, merged.Transducer);
        // What is told by zones cannot become a tape, nor the other way: the rules then refuse the rows that differ.
        Differ(differences, ReadingFields.ZoneScheme, TextOf(content.Zones), TextOf(file.Zones));
        foreach (FixedPoint point in file.FixedPoints)
        {
            double? was = FixedPoint.LevelOf(content.FixedPoints, point.Kind);
            Differ(differences, FixedPointRules.FieldOf(point.Kind), was, point.Level.Value);
        }

        List<DraftReading> rows = [.. content.Readings];
        Dictionary<object, int> byKey = [];
        for (int index = 0; index < rows.Count; index++)
        {
            byKey.TryAdd(ExaminationRules.KeyOf(rows[index].Values), index);
        }

        int known = 0;
        foreach (Reading reading in file.Readings)
        {
            ReadingDraft inFile = ReadingMap.ToDraft(reading);
            int before = differences.Count;
            string path = PathOf(inFile);
            if (byKey.TryGetValue(ExaminationRules.KeyOf(inFile), out int index))
            {
                ReadingDraft was = rows[index].Values;
                ReadingDraft becomes = Merge(was, inFile);
                Compare(differences, path, was, becomes);
                rows[index] = rows[index] with { Values = becomes };
            }
            else
            {
                Compare(differences, path, null, inFile);
                rows.Add(new DraftReading(null, inFile));
            }

            known += differences.Count == before ? 1 : 0;
        }

        return new PlannedExamination
        {
            File = file,
            Kept = kept,
            Standing = differences.Count == 0 ? ExaminationStanding.Known : ExaminationStanding.Differs,
            KnownReadings = known,
            Differences = differences,
            Amend = amend && differences.Count > 0,
            Amended = merged with { Readings = rows },
        };
    }

    private static string TextOf(ZoneScheme? scheme) => scheme is { } zones ? ZoneSchemes.CodeOf(zones) : "cm";

    private static ReadingDraft Merge(ReadingDraft kept, ReadingDraft file)
    {
        bool lesionInFile = file.LesionIsDiffuse || file.LesionAreaCm2 is not null;
        return kept with
        {
            Role = file.Role == ReadingRole.None ? kept.Role : file.Role,
            LigamentAreaCm2 = file.LigamentAreaCm2 ?? kept.LigamentAreaCm2,
            LesionAreaCm2 = lesionInFile ? file.LesionAreaCm2 : kept.LesionAreaCm2,
            LesionIsDiffuse = lesionInFile ? file.LesionIsDiffuse : kept.LesionIsDiffuse,
            LesionPercent = file.LesionPercent ?? kept.LesionPercent,
            ThicknessCm = file.ThicknessCm ?? kept.ThicknessCm,
            WidthCm = file.WidthCm ?? kept.WidthCm,
            OtherLimbLigamentAreaCm2 = file.OtherLimbLigamentAreaCm2 ?? kept.OtherLimbLigamentAreaCm2,
            OtherLimbThicknessCm = file.OtherLimbThicknessCm ?? kept.OtherLimbThicknessCm,
            EchogenicityScale = file.EchogenicityGrade is null ? kept.EchogenicityScale : file.EchogenicityScale,
            EchogenicityGrade = file.EchogenicityGrade ?? kept.EchogenicityGrade,
            FibreAlignmentScale = file.FibreAlignmentGrade is null ? kept.FibreAlignmentScale : file.FibreAlignmentScale,
            FibreAlignmentGrade = file.FibreAlignmentGrade ?? kept.FibreAlignmentGrade,
            Note = file.Note ?? kept.Note,
        };
    }

    private static void Compare(List<FieldDifference> differences, string path, ReadingDraft? kept, ReadingDraft file)
    {
        foreach (((string field, object? was), (_, object? isNow)) in ReadingValues.Measured(kept).Zip(ReadingValues.Measured(file)))
        {
            Differ(differences, $"{path}.{field}", was, isNow);
        }
    }

    private static void Differ(List<FieldDifference> differences, string field, object? kept, object? inFile)
    {
        if (inFile is not (null or ReadingRole.None) && !Equals(kept, inFile))
        {
            differences.Add(new FieldDifference(field, kept is null ? null : RecordText.Of(kept), RecordText.Of(inFile)));
        }
    }

    private static string PathOf(ReadingDraft reading) => $"readings[{string.Join(' ', Parts(reading).Where(part => part.Length > 0))}]";

    private static IEnumerable<string> Parts(ReadingDraft reading) =>
        [
            RecordText.Of(reading.Part),
            reading.Zone ?? RecordText.Of(reading.LevelCm),
            reading.Lesion ?? "",
            reading.Measurer ?? "",
            reading.Repeat ?? "",
        ];
}
