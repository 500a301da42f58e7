using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Imports;

/// <summary>The texts of a case of a file as they can be kept.</summary>
internal static class ImportTexts
{
    /// <summary>What keeps a text from being kept, each at its field.</summary>
    public static IEnumerable<Problem> Unkeepable(CaseFile file) =>
        new[] { Line("label", file.Label), Line("horse.name", file.Horse.Name), Line("horse.microchip", file.Horse.Microchip) }
            .Concat(file.Course.Examinations.SelectMany(OfExamination))
            .OfType<Problem>();

    private static IEnumerable<Problem?> OfExamination(Examination examination) =>
        [
            Line("examination.name", examination.Name),
            Line("examination.examiner", examination.Examiner),
            Line("examination.transducer", examination.Transducer),
            .. examination.Readings.SelectMany(OfReading),
        ];

    private static IEnumerable<Problem?> OfReading(Reading reading) =>
        [
            Line("reading.lesion", reading.Lesion),
            Line("reading.measurer", reading.Measurer),
            Line("reading.repeat", reading.Repeat),
            Checks.Unkeepable("reading.note", reading.Note, Checks.LongestText),
        ];

    private static Problem? Line(string field, string? text) => Checks.Unkeepable(field, text, Checks.LongestName);
}
