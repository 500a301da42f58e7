using System.Globalization;

namespace RehabTrack.Records.Room;

/// <summary>Values as the arguments of problems carry them: invariant, dates ISO 8601.</summary>
internal static class RecordText
{
    public static string Of(int value) => value.ToString(CultureInfo.InvariantCulture);

    public static string Of(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    public static string Of(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>An id as the heart carries it.</summary>
    public static string Of(Guid id) => id.ToString("D");

    public static string Of(object? value) =>
        value switch
        {
            null => "",
            DateOnly date => Of(date),
            double number => Of(number),
            IFormattable formattable => formattable.ToString(null, CultureInfo.InvariantCulture),
            _ => value.ToString() ?? "",
        };
}
