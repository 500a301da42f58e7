using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Examinations;
using RehabTrack.Web.Features.Examinations.Worksheets;

namespace RehabTrack.Web.Tests.Features.Examinations;

public sealed class EntryGridTests
{
    public sealed class A_new_examination
    {
        [Fact]
        public void Lays_out_the_levels_of_the_last_one_and_expects_them()
        {
            EntryGrid grid = Entering.LaidOut(20, 22.5, 24);

            Assert.Equal(["20", "22.5", "24"], grid.Rows.Select(row => row[EntryColumn.Level]));
            Assert.All(grid.Rows, row => Assert.Equal("body", row[EntryColumn.Part]));
            Assert.All(grid.Rows, row => Assert.True(row.Expected));
        }

        [Fact]
        public void Carries_no_role_over_because_the_worst_level_may_have_moved()
        {
            ReadingDraft level = new()
            {
                Part = Part.Body,
                LevelCm = 20,
                Role = ReadingRole.NormalAbove,
            };

            EntryRow row = Assert.Single(EntryGrid.Of([new DraftReading(null, level)], true, Entering.Keys()).Rows);

            Assert.Equal("", row[EntryColumn.Role]);
        }

        [Fact]
        public void Of_a_case_without_an_earlier_one_has_a_single_empty_row()
        {
            EntryRow row = Assert.Single(EntryGrid.Of([], true, Entering.Keys()).Rows);

            Assert.False(row.Expected);
            Assert.All(row.Cells, cell => Assert.Equal("", cell));
        }
    }

    public sealed class Completeness
    {
        [Fact]
        public void Needs_every_level_of_the_last_examination_read_or_marked()
        {
            EntryGrid grid = Entering.LaidOut(20, 22, 24);
            Assert.Equal(3, grid.Unread);

            grid = grid.Type("r1", EntryColumn.LigamentArea, "1.2").Type("r2", EntryColumn.Thickness, "0.8");
            Assert.Equal(1, grid.Unread);
            Assert.False(grid.IsComplete);

            Assert.True(grid.Strike("r3").IsComplete);
        }

        [Fact]
        public void Is_not_reached_by_marking_everything_not_read()
        {
            EntryGrid grid = Entering.LaidOut(20).Strike("r1");

            Assert.Equal(0, grid.Unread);
            Assert.False(grid.IsComplete);
        }

        [Fact]
        public void Is_not_reached_by_a_note_or_a_lesion_name()
        {
            EntryGrid grid = Entering.LaidOut(20).Type("r1", EntryColumn.Note, "gas in the way").Type("r1", EntryColumn.Lesion, "A");

            Assert.Equal(1, grid.Unread);
        }
    }

    public sealed class Rows_change
    {
        private readonly EntryGrid _grid = Entering.LaidOut(20, 22);

        [Fact]
        public void A_new_level_stands_below_on_the_same_part_and_asks_for_its_level()
        {
            EntryGrid grid = _grid.InsertBelow("r1", "new");

            Assert.Equal(["r1", "new", "r2"], grid.Rows.Select(row => row.Key));
            Assert.Equal("body", grid.Rows[1][EntryColumn.Part]);
            Assert.Equal("", grid.Rows[1][EntryColumn.Level]);
        }

        [Fact]
        public void A_second_tracing_names_the_same_place_and_counts_on()
        {
            EntryGrid grid = _grid.Repeat("r1", "second").Repeat("r1", "third");

            Assert.Equal(["r1", "second", "third", "r2"], grid.Rows.Select(row => row.Key));
            Assert.Equal([null, "2", "3", null], grid.Rows.Select(row => row.Repeat));
            Assert.Equal("20", grid.Rows[2][EntryColumn.Level]);
        }

        [Fact]
        public void A_level_marked_not_read_keeps_what_was_typed_and_comes_back()
        {
            EntryGrid grid = _grid.Type("r1", EntryColumn.LigamentArea, "1.2").Strike("r1");
            Assert.True(grid.Rows[0].NotRead);
            Assert.Equal("1.2", grid.Rows[0][EntryColumn.LigamentArea]);

            Assert.False(grid.Strike("r1").Rows[0].NotRead);
        }

        [Fact]
        public void Typing_a_measurement_takes_the_mark_away()
        {
            EntryGrid grid = _grid.Strike("r1").Type("r1", EntryColumn.Thickness, "0.8");

            Assert.False(grid.Rows[0].NotRead);
        }

        [Fact]
        public void Marking_an_empty_added_row_takes_it_away_and_a_filled_one_stays()
        {
            EntryGrid grid = _grid.InsertBelow("r2", "new");
            Assert.Equal(2, grid.Strike("new").Rows.Count);

            EntryGrid filled = grid.Type("new", EntryColumn.LigamentArea, "1");
            Assert.Equal(3, filled.Strike("new").Rows.Count);
        }

        [Fact]
        public void Sorting_goes_down_each_path_and_leaves_unreadable_levels_last()
        {
            EntryGrid grid = new EntryGrid([
                .. new[] { ("lateral branch", "21"), ("body", "x"), ("body", "22,5"), ("origin", "9.5"), ("body", "22") }.Select(
                    (row, index) =>
                        new EntryRow { Key = $"{index}" }
                            .With(EntryColumn.Part, row.Item1)
                            .With(EntryColumn.Level, row.Item2)
                ),
            ]).Sorted();

            Assert.Equal(["9.5", "22", "22,5", "x", "21"], grid.Rows.Select(row => row[EntryColumn.Level]));
        }

        [Theory]
        [InlineData(EntryColumn.Part, "m", "medial branch")]
        [InlineData(EntryColumn.Part, "Lateral", "lateral branch")]
        [InlineData(EntryColumn.Part, "medial-branch", "medial branch")]
        [InlineData(EntryColumn.Role, "w", "worst")]
        [InlineData(EntryColumn.Role, "a", "normal above")]
        [InlineData(EntryColumn.Role, "b", "normal below")]
        [InlineData(EntryColumn.LesionArea, "d", "diffuse")]
        [InlineData(EntryColumn.LesionArea, " 0,5 ", "0,5")]
        [InlineData(EntryColumn.Role, "n", "n")]
        [InlineData(EntryColumn.Part, "elbow", "elbow")]
        public void First_letters_are_written_out_when_they_mean_one_word(EntryColumn column, string typed, string shown) =>
            Assert.Equal(shown, _grid.Type("r1", column, typed).Rows[0][column]);
    }

    public sealed class What_is_kept
    {
        [Fact]
        public void Is_written_out_so_that_reading_it_again_gives_the_same()
        {
            ReadingDraft full = new()
            {
                Part = Part.Body,
                LevelCm = 24,
                Lesion = "A",
                Role = ReadingRole.Worst,
                LigamentAreaCm2 = 1.5,
                LesionAreaCm2 = 0.3,
                ThicknessCm = 0.85,
                WidthCm = 1.4,
                OtherLimbLigamentAreaCm2 = 1.21,
                OtherLimbThicknessCm = 0.8,
                EchogenicityScale = GradeScales.Echogenicity0To4,
                EchogenicityGrade = 3,
                FibreAlignmentGrade = 2,
                Measurer = "H. Brandt",
                Note = "clear edge",
            };
            ExaminationContent content = new()
            {
                Date = new DateOnly(2026, 7, 9),
                Name = "second visit",
                Stance = Stance.NonWeightBearing,
                Examiner = "A. Examiner",
                Transducer = "linear 12 MHz",
                Landmark = Landmark.TarsometatarsalJoint,
                FixedPoints =
                [
                    new FixedPoint(FixedPointKind.Origin, new Centimetres(8.4)),
                    new FixedPoint(FixedPointKind.LateralInsertion, new Centimetres(30.5)),
                ],
                Standoff = true,
                Clipped = false,
                Coupling = Coupling.Alcohol,
                Note = "calm",
                Readings =
                [
                    new(Guid.CreateVersion7(), full),
                    new(Guid.CreateVersion7(), full with { LevelCm = 26, LesionAreaCm2 = null, LesionIsDiffuse = true, Repeat = "2" }),
                    new(Guid.CreateVersion7(), full with { Plane = ImagePlane.LongAxis, LigamentAreaCm2 = null, LesionAreaCm2 = null }),
                    new(
                        Guid.CreateVersion7(),
                        full with
                        {
                            LevelCm = 28,
                            LesionAreaCm2 = null,
                            LesionPercent = 20,
                            Measurer = "Another",
                            EchogenicityScale = GradeScales.Echogenicity0To3,
                        }
                    ),
                ],
            };

            WorksheetReading read = WorksheetReader.Read(
                Worksheet.Of(content, false, GradeScales.Echogenicity0To3, Entering.Keys()),
                Entering.Terms with
                {
                    Kept = content,
                }
            );

            Assert.True(read.IsClean);
            Assert.Equivalent(content, read.Content, strict: true);
        }
    }
}
