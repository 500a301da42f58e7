using System.Text.Json;

namespace RehabTrack.Exchange.Tests.Batch;

public sealed class BatchZoneTests : BatchTests
{
    [Fact]
    public void Batch_analysis_tells_zones_by_name_and_no_length()
    {
        string sheet =
            "case,limb,part,examination_date,zone_scheme,zone,ligament_area_cm2,lesion_area_cm2\n"
            + string.Concat(
                Enumerable
                    .Range(1, 3)
                    .SelectMany(month =>
                        new[] { ("2A", 0.0), ("2B", 0.5 - (0.1 * month)), ("3A", 0.0) }.Select(zone =>
                            FormattableString.Invariant($"C1,LH,body,2026-0{month}-10,hind-9,{zone.Item1},1.3,{zone.Item2}\n")
                        )
                    )
            );
        JsonElement analysed = Analyse(sheet).GetProperty("cases")[0];
        JsonElement examination = analysed.GetProperty("examinations")[0];
        JsonElement burden = examination.GetProperty("burden");
        Assert.Equal("hind-9", examination.GetProperty("zoneScheme").GetString());
        Assert.Equal("2B", burden.GetProperty("worstZone").GetString());
        Assert.Equal(JsonValueKind.Null, burden.GetProperty("worstLevelCm").ValueKind);
        Assert.Equal(JsonValueKind.Null, burden.GetProperty("volumeCm3").ValueKind);
        Assert.Equal(JsonValueKind.Null, burden.GetProperty("lesionLengthCm").ValueKind);
        Assert.Equal(
            ["2A", "2B", "3A"],
            analysed.GetProperty("tracks").EnumerateArray().Select(track => track.GetProperty("consensusZone").GetString())
        );
    }
}
