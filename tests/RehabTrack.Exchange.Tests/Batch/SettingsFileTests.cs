using System.Reflection;
using System.Text;
using RehabTrack.Exchange.Batch;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Exchange.Tests.Batch;

public sealed class SettingsFileTests
{
    [Fact]
    public void What_is_named_is_set_and_the_rest_keeps_its_default()
    {
        SettingsReading reading = Read(
            """{ "error": { "lesionAreaCv": 0.2 }, "trend": { "windowExaminations": 4, "slowestAcceptableLogPer60Days": -0.1 } }"""
        );

        Assert.Empty(reading.Problems);
        Assert.Equal(
            new AnalysisSettings
            {
                Error = new MeasurementErrorSettings { LesionAreaCv = 0.2 },
                Trend = new TrendSettings { WindowExaminations = 4, SlowestAcceptableLogPer60Days = -0.1 },
            },
            reading.Settings
        );
    }

    [Theory]
    [InlineData("", "settings-not-json", "")]
    [InlineData("[]", "settings-not-json", "")]
    [InlineData("{ \"trend\": ", "settings-not-json", "")]
    [InlineData("{ \"trends\": {} }", "setting-group-unknown", "trends")]
    [InlineData("{ \"trend\": 4 }", "setting-group-unknown", "trend")]
    [InlineData("{ \"trend\": { \"window\": 4 } }", "setting-unknown", "trend.window")]
    [InlineData("{ \"trend\": { \"targetFraction\": 0.2, \"targetFraction\": 0.3 } }", "setting-twice", "trend.targetFraction")]
    [InlineData("{ \"trend\": { \"targetFraction\": \"0.2\" } }", "setting-not-in-range", "trend.targetFraction")]
    [InlineData("{ \"trend\": { \"targetFraction\": 1.5 } }", "setting-not-in-range", "trend.targetFraction")]
    [InlineData(
        "{ \"trend\": { \"slowestAcceptableLogPer60Days\": 0.15 } }",
        "setting-not-in-range",
        "trend.slowestAcceptableLogPer60Days"
    )]
    [InlineData("{ \"trend\": { \"windowExaminations\": 3.5 } }", "setting-not-whole-in-range", "trend.windowExaminations")]
    [InlineData("{ \"trend\": { \"windowExaminations\": 2 } }", "setting-not-whole-in-range", "trend.windowExaminations")]
    [InlineData("{ \"error\": { \"lesionAreaCv\": 1e400 } }", "setting-not-in-range", "error.lesionAreaCv")]
    public void What_cannot_be_used_names_its_key(string json, string code, string key)
    {
        SettingsReading reading = Read(json);

        Assert.Null(reading.Settings);
        Assert.Equal((key, code), (reading.Problems[0].Field, reading.Problems[0].Code));
    }

    [Fact]
    public void All_problems_are_told_at_once() =>
        Assert.Equal(3, Read("""{ "x": 1, "error": { "y": 1, "widthCv": -1 } }""").Problems.Count);

    [Fact]
    public void Every_name_is_a_setting_whose_default_lies_in_its_range()
    {
        AnalysisSettings defaults = new();
        foreach (string name in SettingRanges.All.Select(range => range.Name))
        {
            string[] parts = name.Split('.');
            string json = FormattableString.Invariant(
                $"{{ \"{parts[0]}\": {{ \"{parts[1]}\": {SettingRanges.ValueOf(defaults, name)} }} }}"
            );
            Assert.Equal(defaults, Read(json).Settings);
        }
    }

    [Fact]
    public void The_whole_error_model_can_be_set()
    {
        string[] named =
        [
            .. SettingRanges
                .All.Select(range => range.Name)
                .Where(name => name.StartsWith("error.", StringComparison.Ordinal))
                .Select(name => name[6..]),
        ];

        Assert.Equal(
            typeof(MeasurementErrorSettings)
                .GetProperties(BindingFlags.Public | BindingFlags.Instance)
                .Select(property => char.ToLowerInvariant(property.Name[0]) + property.Name[1..])
                .Order(StringComparer.Ordinal),
            named.Order(StringComparer.Ordinal)
        );
    }

    private static SettingsReading Read(string json) => SettingsFile.Read(Encoding.UTF8.GetBytes(json));
}
