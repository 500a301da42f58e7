using System.Globalization;
using System.Text;
using System.Text.Json;
using CsCheck;
using RehabTrack.Exchange.Batch;

namespace RehabTrack.Exchange.Tests.Batch;

public sealed class BatchAnalysisTests : BatchTests
{
    private const string Headings = "case;limb;part;examination_date;level_cm;ligament_area_cm2;lesion_area_cm2";

    private static readonly double[] Ligament = [1.20, 1.30, 1.50, 1.40, 1.30, 1.20];
    private static readonly double[] Lesion = [0, .10, .45, .30, .05, 0];

    /// <summary>Formula of total percent: ECM 330; the sums 7.90 and 0.90 and the trapezoid 4 cm apart are done by hand.</summary>
    [Fact]
    public void One_examination_of_six_levels_gives_the_figures_computed_by_hand()
    {
        JsonElement root = Analyse(Sheet(("C1", "2026-01-10", 12, 4, 1)));

        JsonElement burden = root.GetProperty("cases")[0].GetProperty("examinations")[0].GetProperty("burden");
        Assert.Equal(100 * .90 / 7.90, burden.GetProperty("totalPercent").GetDouble(), 9);
        Assert.Equal(11.4, burden.GetProperty("totalPercent").GetDouble(), 0.05);
        Assert.Equal(30.0, burden.GetProperty("worstPercent").GetDouble(), 9);
        Assert.Equal(20, burden.GetProperty("worstLevelCm").GetDouble(), 9);
        Assert.Equal(3.60, burden.GetProperty("volumeCm3").GetDouble(), 9);
        Assert.True(burden.GetProperty("levelsComplete").GetBoolean());
        Assert.False(burden.GetProperty("volumeIsLowerBound").GetBoolean());
        Assert.Equal("2026-01-10", root.GetProperty("asOf").GetString());
        Assert.Equal(1, root.GetProperty("schemaVersion").GetInt32());
    }

    [Fact]
    public void A_course_of_shares_alone_speaks_as_lesion_area_and_says_that_it_is_a_share()
    {
        JsonElement trend = Analyse(
                "case;limb;part;examination_date;level_cm;lesion_percent\n"
                    + "C1;LF;body;2026-01-10;20;40\nC1;LF;body;2026-03-11;20;28\nC1;LF;body;2026-05-10;20;19.6\n"
            )
            .GetProperty("cases")[0]
            .GetProperty("trend");

        Assert.Equal("lesion-area", trend.GetProperty("measure").GetString());
        Assert.True(trend.GetProperty("isShareOfLigament").GetBoolean());
        // On y = asinh(cv·x/s0) with cv² = .12² + .07² and s0 = 2 (docs/methods/healing.md) three even dates give (y3 - y1)/2.
        double steepness = Math.Sqrt((.12 * .12) + (.07 * .07)) / 2;
        double slope = (Math.Asinh(steepness * 19.6) - Math.Asinh(steepness * 40)) / 2;
        Assert.Equal(100 * (Math.Exp(slope) - 1), trend.GetProperty("course").GetProperty("ratePercentPer60Days").GetDouble(), 0.2);
    }

    [Fact]
    public void A_lesion_that_shrinks_by_a_quarter_at_each_recheck_is_healing_at_that_rate()
    {
        JsonElement trend = Analyse(
                Sheet(("C1", "2026-01-10", 12, 2, 1), ("C1", "2026-03-11", 12, 2, .75), ("C1", "2026-05-10", 12, 2, .5625))
            )
            .GetProperty("cases")[0]
            .GetProperty("trend");

        Assert.Equal("lesion-volume", trend.GetProperty("measure").GetString());
        Assert.False(trend.GetProperty("isShareOfLigament").GetBoolean());
        Assert.Equal("healing", trend.GetProperty("verdict").GetString());
        Assert.Equal(-25, trend.GetProperty("ratePercentPer60Days").GetDouble(), 0.5);
        Assert.Equal(Math.Log(.75), trend.GetProperty("slopeLogPer60Days").GetDouble(), 0.01);
        Assert.Equal(3, trend.GetProperty("examinationsUsed").GetInt32());
        JsonElement course = trend.GetProperty("course");
        Assert.InRange(
            course.GetProperty("slopeLogPer60Days").GetDouble(),
            course.GetProperty("slopeLower95").GetDouble(),
            course.GetProperty("slopeUpper95").GetDouble()
        );
        Assert.Equal(100 * (Math.Exp(course.GetProperty("slopeLower95").GetDouble()) - 1), course.GetProperty("lower95").GetDouble(), 9);
    }

    [Fact]
    public void Every_name_of_the_documented_shape_is_there_and_unknown_figures_are_null()
    {
        JsonElement root = Analyse(
            $"{Headings}\nC1;LH;body;2026-01-10;20;1.5;diffuse\nC1;LH;body;2026-03-10;20;1.4;\nC1;LH;nowhere;2026-03-10;22;1.4;\n"
        );

        Has(root, "schemaVersion", "cases", "rejected", "asOf", "settings", "counts");
        JsonElement one = root.GetProperty("cases")[0];
        Has(one, "case", "examinations", "tracks", "trend", "parts", "lesions", "findings");
        Has(one.GetProperty("examinations")[0], "date", "burden");
        JsonElement burden = one.GetProperty("examinations")[0].GetProperty("burden");
        Has(
            burden,
            "volumeCm3",
            "volumeStandardError",
            "volumeIsLowerBound",
            "totalPercent",
            "levelsComplete",
            "worstPercent",
            "worstLevelCm",
            "lesionLengthCm"
        );
        Assert.Equal(JsonValueKind.Null, burden.GetProperty("volumeCm3").ValueKind);
        JsonElement track = one.GetProperty("tracks")[0];
        Has(track, "track", "part", "consensusLevelCm", "readings");
        Has(track.GetProperty("readings")[0], "row", "examinationDate", "levelCm", "linkProbability", "uncertain");
        Assert.Equal(JsonValueKind.Null, track.GetProperty("readings")[0].GetProperty("linkProbability").ValueKind);
        JsonElement trend = one.GetProperty("trend");
        string[] figures = ["slopeLogPer60Days", "standardError", "ratePercentPer60Days", "lower95", "upper95", "examinationsUsed"];
        Has(trend, ["measure", "verdict", "course", .. figures]);
        Has(trend.GetProperty("course"), ["slopeLower95", "slopeUpper95", .. figures]);
        Assert.Equal("not-yet-readable", trend.GetProperty("verdict").GetString());
        Assert.Equal(JsonValueKind.Null, trend.GetProperty("slopeLogPer60Days").ValueKind);
        Has(one.GetProperty("lesions")[0], "lesion", "part", "trend", "examinations");
        Has(one.GetProperty("parts")[0], "path", "examinations");
        Has(one.GetProperty("findings")[0], "kind", "severity", "message");
        JsonElement rejected = Assert.Single(root.GetProperty("rejected").EnumerateArray().ToList());
        Assert.Equal(4, rejected.GetProperty("row").GetInt32());
        Assert.Equal("part", rejected.GetProperty("column").GetString());
        Assert.Equal("nowhere", rejected.GetProperty("value").GetString());
        Assert.Equal("unknown-word", rejected.GetProperty("reason").GetString());
    }

    [Fact]
    public void Every_accepted_row_is_on_exactly_one_track_also_repeats_lesions_and_planes()
    {
        JsonElement root = Analyse(
            "case;part;examination_date;level_cm;ligament_area_cm2;lesion_area_cm2;lesion;measurer;repeat;plane;thickness_cm\n"
                + "C1;body;2026-01-10;20;1.5;.3;A;x;1;;\n"
                + "C1;body;2026-01-10;20;1.5;.3;A;x;2;;\n"
                + "C1;body;2026-01-10;20;1.5;.1;B;x;;;\n"
                + "C1;body;2026-01-10;20;;;;x;;long-axis;.9\n"
                + "C1;origin;2026-01-10;20;1.6;;;y;;;\n"
                + "C1;medial branch;2026-01-10;20;.8;0;;x;;;\n"
                + "C1;body;2026-03-10;20.5;1.5;.3;A;x;;;\n"
        );

        JsonElement one = root.GetProperty("cases")[0];
        int[] rows =
        [
            .. one.GetProperty("tracks")
                .EnumerateArray()
                .SelectMany(track => track.GetProperty("readings").EnumerateArray())
                .Select(reading => reading.GetProperty("row").GetInt32()),
        ];
        Assert.Equal([2, 3, 4, 5, 6, 7, 8], rows.Order());
        string[] tracks = [.. one.GetProperty("tracks").EnumerateArray().Select(track => track.GetProperty("track").GetString()!)];
        Assert.Equal(tracks.Length, tracks.Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void The_order_of_the_rows_changes_nothing_but_the_row_numbers()
    {
        string[] rows = Sheet(
                ("B", "2026-01-10", 12, 2, 1),
                ("B", "2026-03-11", 12.6, 2, .8),
                ("B", "2026-05-10", 11.8, 2, .7),
                ("A", "2026-01-10", 14, 2, 1),
                ("A", "2026-03-11", 14.3, 2, 1.1),
                ("a", "2026-03-11", 14.3, 2, 1.1)
            )
            .TrimEnd('\n')
            .Split('\n')[1..];
        string expected = WithoutRows(Run($"{Headings}\n{string.Join('\n', rows)}\n").Json);

        Gen.Shuffle(rows)
            .Sample(
                shuffled => Assert.Equal(expected, WithoutRows(Run($"{Headings}\n{string.Join('\n', shuffled)}\n").Json)),
                seed: "0000000000000",
                iter: 20,
                threads: 1
            );
    }

    [Fact]
    public void Cases_stand_in_the_order_of_their_labels_and_rejected_rows_in_that_of_the_file()
    {
        StringBuilder text = new($"{Headings}\n");
        for (int index = 0; index < 300; index++)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"Case {(index * 7919) % 300:000};LH;{(index % 10 == 3 ? "elbow" : "body")};2026-01-10;20;1.5;{(index % 10 == 5 ? "2" : "0.2")}\n"
            );
        }

        JsonElement root = Analyse(text.ToString());

        string[] labels = [.. root.GetProperty("cases").EnumerateArray().Select(one => one.GetProperty("case").GetString()!)];
        int[] rejected = [.. root.GetProperty("rejected").EnumerateArray().Select(row => row.GetProperty("row").GetInt32())];
        Assert.Equal(240, labels.Length);
        Assert.Equal(labels.Order(StringComparer.Ordinal), labels);
        Assert.Equal(60, rejected.Length);
        Assert.Equal(rejected.Order(), rejected);
    }

    [Fact]
    public void A_file_divided_over_many_parts_gives_the_same_as_in_one_however_many_are_at_work()
    {
        string text = Sheet([.. Enumerable.Range(0, 60).Select(index => ($"Case {index}", "2026-01-10", 12.0, 2.0, 1.0))]);
        string padded = text + string.Join('\n', Enumerable.Repeat(new string(' ', 900_000), 30));

        string json = Run(text).Json;
        Assert.Equal(json, Run(padded).Json);
        Assert.Equal(json, Run(padded, options: Options() with { Degree = 1 }).Json);
        Assert.Equal(json, Run(padded, options: Options() with { Degree = 8 }).Json);
    }

    [Fact]
    public void As_of_leaves_later_rows_unread_and_says_how_many()
    {
        string text = Sheet(("C1", "2026-01-10", 12, 2, 1), ("C1", "2026-03-11", 12, 2, .8), ("C1", "2026-05-10", 12, 2, .5));

        (BatchOutcome outcome, string json) = Run(text, new DateOnly(2026, 3, 11));
        JsonElement root = JsonDocument.Parse(json).RootElement;

        Assert.Equal(6, outcome.AfterAsOf);
        Assert.Equal(12, outcome.Accepted);
        Assert.Equal("2026-03-11", root.GetProperty("asOf").GetString());
        Assert.Equal(2, root.GetProperty("cases")[0].GetProperty("examinations").GetArrayLength());
        Assert.Empty(root.GetProperty("rejected").EnumerateArray());
    }

    [Fact]
    public void A_date_far_ahead_is_no_error_because_the_clock_is_never_read()
    {
        JsonElement root = Analyse($"{Headings}\nC1;LH;body;2126-01-10;20;1.5;0.2\n");

        Assert.Empty(root.GetProperty("rejected").EnumerateArray());
        Assert.Equal("2126-01-10", root.GetProperty("asOf").GetString());
    }

    [Fact]
    public void Headings_without_rows_give_an_empty_result()
    {
        JsonElement root = Analyse($"{Headings}\n");

        Assert.Empty(root.GetProperty("cases").EnumerateArray());
        Assert.Equal(JsonValueKind.Null, root.GetProperty("asOf").ValueKind);
    }

    [Theory]
    [InlineData("", "file-empty")]
    [InlineData("PK\u0003\u0004", "file-is-workbook")]
    [InlineData("Patient;Datum;CSA\nx;y;z\n", "file-other-shape")]
    [InlineData("case;part;case;examination_date;level_cm;width_cm\n", "heading-twice")]
    [InlineData("case;part;examination_date;level_cm;width_cm\nC1;body;\"2026-01-10;20;1\n\n", "quote-not-closed")]
    public void A_file_that_cannot_be_read_as_such_is_refused_and_nothing_is_written(string text, string code)
    {
        (BatchOutcome outcome, string json) = Run(text);

        Assert.Equal(code, outcome.FileProblem?.Code);
        Assert.Empty(json);
    }

    /// <summary>Limits of shared/limits.json; common practice, no source.</summary>
    [Theory]
    [InlineData(120, 1, null)]
    [InlineData(121, 1, "case-of-too-many-examinations")]
    [InlineData(1, 250, null)]
    [InlineData(1, 251, "examination-too-large")]
    public void One_injury_is_not_examined_without_end_and_no_examination_has_levels_without_end(int examinations, int levels, string? code)
    {
        StringBuilder text = new($"{Headings}\n");
        for (int examination = 0; examination < examinations; examination++)
        {
            for (int level = 0; level < levels; level++)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"C1;LH;body;{new DateOnly(2020, 1, 1).AddDays(examination):yyyy-MM-dd};{10 + (0.1 * level):0.0};1.5;0.2\n"
                );
            }
        }

        JsonElement rejected = Analyse(text.ToString()).GetProperty("rejected");

        Assert.Equal(code is null ? 0 : examinations * levels, rejected.GetArrayLength());
        Assert.All(rejected.EnumerateArray().ToList(), row => Assert.Equal(code, row.GetProperty("code").GetString()));
    }

    [Fact]
    public void A_case_beyond_all_measure_is_refused_row_by_row_and_the_others_stay()
    {
        StringBuilder text = new($"{Headings}\nOther;LH;body;2026-01-10;20;1.5;0.2\n");
        for (int index = 0; index < 5001; index++)
        {
            text.Append(CultureInfo.InvariantCulture, $"C1;LH;body;{new DateOnly(2000, 1, 1).AddDays(index):yyyy-MM-dd};20;1.5;0.2\n");
        }

        JsonElement root = Analyse(text.ToString());

        Assert.Equal("Other", Assert.Single(root.GetProperty("cases").EnumerateArray().ToList()).GetProperty("case").GetString());
        Assert.Equal(5001, root.GetProperty("rejected").GetArrayLength());
    }

    [Fact]
    public void Rows_are_counted_by_what_became_of_them()
    {
        (BatchOutcome outcome, _) = Run(Sheet(("C1", "2026-01-10", 12, 2, 1)) + "C2;LH;body;2026-01-10;20;1.5;9\n");

        Assert.Equal((7, 6, 1, 1), (outcome.Rows, outcome.Accepted, outcome.Rejected, outcome.Cases));
    }

    [Fact]
    public void Body_and_branch_and_each_named_lesion_have_their_own_burdens()
    {
        JsonElement one = Analyse(
                "case;part;examination_date;level_cm;ligament_area_cm2;lesion_area_cm2;lesion\n"
                    + "C1;body;2026-01-10;12;1.2;0;A\nC1;body;2026-01-10;14;1.2;.6;A\nC1;body;2026-01-10;16;1.2;0;A\n"
                    + "C1;body;2026-01-10;18;1.2;.3;B\nC1;body;2026-01-10;20;1.2;0;B\n"
                    + "C1;medial branch;2026-01-10;30;.8;0;\nC1;medial branch;2026-01-10;32;.8;.24;\nC1;medial branch;2026-01-10;34;.8;0;\n"
            )
            .GetProperty("cases")[0];
        static JsonElement Burden(JsonElement of) => of.GetProperty("examinations")[0].GetProperty("burden");

        JsonElement[] parts = [.. one.GetProperty("parts").EnumerateArray()];
        JsonElement[] lesions = [.. one.GetProperty("lesions").EnumerateArray()];
        Assert.Equal(["axial", "medial-branch"], parts.Select(part => part.GetProperty("path").GetString()));
        // ECM 330 and SAEVA 191: .9/6.0 is 15 %, mild; Boado 2025: a section of 30 % is of the second class.
        Assert.Equal([15, 10], parts.Select(part => Math.Round(Burden(part).GetProperty("totalPercent").GetDouble(), 9)));
        Assert.Equal(["total-percent", "branch-section"], parts.Select(part => Burden(part).GetProperty("severityScale").GetString()));
        Assert.Equal([1, 2], parts.Select(part => Burden(part).GetProperty("severityClass").GetInt32()));
        Assert.Equal(JsonValueKind.Null, Burden(one).GetProperty("severityClass").ValueKind);
        Assert.Equal(["A", "B", null], lesions.Select(lesion => lesion.GetProperty("lesion").GetString()));
        Assert.Equal([50, 25, 30], lesions.Select(lesion => Math.Round(Burden(lesion).GetProperty("worstPercent").GetDouble(), 9)));
        Assert.Equal([1.2, 0.6, 0.48], lesions.Select(lesion => Math.Round(Burden(lesion).GetProperty("volumeCm3").GetDouble(), 9)));
        Assert.Equal("2026-01-10", lesions[0].GetProperty("examinations")[0].GetProperty("date").GetString());
    }

    [Fact]
    public void What_is_the_same_as_the_whole_case_is_not_written_again()
    {
        JsonElement one = Analyse(Sheet(("C1", "2026-01-10", 12, 4, 1))).GetProperty("cases")[0];

        JsonElement part = Assert.Single(one.GetProperty("parts").EnumerateArray().ToList());
        Assert.Equal("axial", part.GetProperty("path").GetString());
        Assert.Equal(0, part.GetProperty("examinations").GetArrayLength());
        Assert.Equal(0, one.GetProperty("lesions")[0].GetProperty("examinations").GetArrayLength());
    }

    private static string Sheet(params (string Case, string Date, double From, double Step, double Share)[] examinations)
    {
        StringBuilder text = new($"{Headings}\n");
        foreach ((string label, string date, double from, double step, double share) in examinations)
        {
            for (int level = 0; level < Ligament.Length; level++)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"{label};LH;body;{date};{from + (step * level)};{Ligament[level]};{Lesion[level] * share}\n"
                );
            }
        }

        return text.ToString();
    }

    private static void Has(JsonElement element, params string[] names)
    {
        foreach (string name in names)
        {
            Assert.True(element.TryGetProperty(name, out _), name);
        }
    }

    /// <summary>The output without the line numbers, which name the file and not the horse.</summary>
    private static string WithoutRows(string json) =>
        System.Text.RegularExpressions.Regex.Replace(
            json,
            "\"row\":[0-9]+",
            "",
            System.Text.RegularExpressions.RegexOptions.None,
            TimeSpan.FromSeconds(5)
        );
}
