using System.Text.Json;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Exchange.Tests.Seed;

public sealed class SeedFilesTests
{
    public static TheoryData<string> Files => [.. SeedFolder.Files];

    [Theory]
    [MemberData(nameof(Files))]
    public void A_file_of_the_demo_is_read_whole_and_without_a_caution(string file)
    {
        SheetResult result = SeedFolder.Read(file);

        Assert.Null(result.FileProblem);
        Assert.False(result.NeedsMapping);
        Assert.Equal([], result.Rejected);
        Assert.Equal([], result.Cautions);
        Assert.Equal(result.Rows, result.RowOfReading.Count);
    }

    [Fact]
    public void The_practice_names_every_case_of_the_files_once() =>
        Assert.Equal(
            SeedFolder.Cases().Select(file => file.Label).Order(StringComparer.Ordinal),
            SeedFolder.Texts("cases", "label").Order(StringComparer.Ordinal)
        );

    [Fact]
    public void Every_horse_of_the_practice_is_in_the_files_under_its_chip() =>
        Assert.Equal(
            SeedFolder.Texts("horses", "microchip").Zip(SeedFolder.Texts("horses", "name")).Order(),
            SeedFolder.Cases().Select(file => (file.Horse.Microchip!, file.Horse.Name!)).Distinct().Order()
        );

    [Fact]
    public void Chips_begin_with_999_which_no_country_has() =>
        Assert.All(SeedFolder.Texts("horses", "microchip"), chip => Assert.Matches("^999[0-9]{12}$", chip));

    [Fact]
    public void People_and_yards_that_a_horse_or_case_names_exist()
    {
        string[] people = [.. SeedFolder.Texts("people", "key")];
        string[] yards = [.. SeedFolder.Texts("yards", "key")];
        string[] named =
        [
            .. SeedFolder
                .Practice.GetProperty("horses")
                .EnumerateArray()
                .SelectMany(horse => (string?[])[Text(horse, "owner"), Text(horse, "trainer"), Text(horse, "referringVet")])
                .OfType<string>(),
            .. SeedFolder.Texts("cases", "responsibleVet"),
        ];

        Assert.Empty(named.Except(people));
        Assert.Empty(SeedFolder.Texts("horses", "yard").Except(yards));
    }

    [Fact]
    public void The_files_show_what_real_files_have()
    {
        Reading[] readings = [.. SeedFolder.Cases().SelectMany(file => file.Course.Examinations).SelectMany(exam => exam.Readings)];

        Assert.Contains(readings, reading => reading.LesionArea.Kind == LesionAreaKind.Diffuse);
        Assert.Contains(readings, reading => reading.LigamentArea is null && reading.Thickness is not null);
        Assert.Contains(
            SeedFolder.Cases(),
            file => file.Course.Examinations.SelectMany(exam => exam.Readings).Select(reading => reading.Measurer).Distinct().Count() == 2
        );
        Assert.Contains(SeedFolder.Cases(), file => file.Course.Examinations.Select(exam => exam.Readings.Count).Distinct().Count() > 1);
        Assert.True(SeedFolder.Cases().GroupBy(file => file.Horse.Microchip).Count() >= 6);
    }

    private static string? Text(JsonElement horse, string name) => horse.GetProperty(name).GetString();
}
