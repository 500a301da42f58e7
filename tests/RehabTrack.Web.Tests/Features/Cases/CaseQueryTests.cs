using Microsoft.AspNetCore.WebUtilities;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Web.Features.Cases;

namespace RehabTrack.Web.Tests.Features.Cases;

public sealed class CaseQueryTests
{
    private static CaseQuery Read(string address)
    {
        Dictionary<string, Microsoft.Extensions.Primitives.StringValues> query = QueryHelpers.ParseQuery(
            address.Contains('?', StringComparison.Ordinal) ? address[address.IndexOf('?', StringComparison.Ordinal)..] : string.Empty
        );
        return CaseQuery.Parse(name => query.TryGetValue(name, out var text) ? text.ToString() : null);
    }

    [Fact]
    public void Every_view_stands_in_its_address_and_comes_back_from_it()
    {
        CaseQuery query = new()
        {
            AsOf = new DateOnly(2026, 8, 1),
            Date = new DateOnly(2026, 7, 9),
            Examination = "second & last",
            Level = new(24.35),
            Path = LinkPath.MedialBranch,
            Compare = new DateOnly(2026, 1, 12),
            Straight = true,
            Why = true,
            Changes = true,
            Visit = new VisitQuery
            {
                Asked = AskedStep.Trot,
                Signs = new VisitSigns
                {
                    HeatSwellingOrPain = false,
                    PainBackWithWork = true,
                    Sound = true,
                    SoundAtTrotInHand = false,
                    UnderAntiInflammatory = false,
                    HadShockWave = true,
                    LastShockWave = new DateOnly(2026, 3, 14),
                    HadNeurectomy = false,
                    PlanStart = new DateOnly(2026, 2, 1),
                },
            },
        };

        Assert.Equal(query, Read(query.AddressOf(Guid.NewGuid())));
    }

    [Fact]
    public void The_plain_page_has_a_plain_address()
    {
        Guid id = Guid.NewGuid();

        Assert.Equal($"/cases/{id}", new CaseQuery().AddressOf(id));
        Assert.Equal(new CaseQuery(), Read("/cases/x"));
    }

    [Fact]
    public void What_cannot_be_read_is_left_out() =>
        Assert.Equal(new CaseQuery(), Read("/cases/x?date=9.7.2026&level=deep&path=9&view=sideways&why=yes&compare=&asof=never"));

    [Fact]
    public void A_rung_is_found_by_date_and_level_and_only_there()
    {
        var course = Invented.Course();
        var analysis = Invented.Analyse(course);

        Rung? rung = Rung.Find(analysis, course, Read("?date=2026-03-13&level=22"));

        Assert.NotNull(rung);
        Assert.Equal(22, rung.Step.Place.Level.Position.Value);
        Assert.Equal(Invented.ExaminationId(2).ToString(), rung.Step.ExaminationId);
        Assert.Equal(3, rung.Others.Count());
        Assert.Null(Rung.Find(analysis, course, Read("?date=2026-03-13&level=22.5")));
        Assert.Null(Rung.Find(analysis, course, Read("?date=2026-03-13&level=22&path=whole")));
        Assert.Null(Rung.Find(analysis, course, Read("?date=2026-03-13")));
        Assert.Equal(rung, Rung.Find(analysis, course, Rung.Choose(new CaseQuery(), course, rung.Step.Place.Key)));
    }

    [Fact]
    public void A_place_told_by_a_zone_is_named_by_it_in_the_address()
    {
        CaseQuery query = new() { Date = new DateOnly(2026, 3, 4), Zone = "2B" };
        string address = query.AddressOf(Guid.Empty);

        Assert.Contains("zone=2B", address, StringComparison.Ordinal);
        Assert.DoesNotContain("level=", address, StringComparison.Ordinal);
        Assert.Equal("2B", CaseQuery.Parse(name => name == "zone" ? "2B" : null).Zone);
        Assert.Null(query.WithoutRung().Zone);
    }
}
