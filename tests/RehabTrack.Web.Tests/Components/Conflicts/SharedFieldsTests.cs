using RehabTrack.Records.History;
using RehabTrack.Web.Components.Conflicts;

namespace RehabTrack.Web.Tests.Components.Conflicts;

/// <summary>Two people at one form: every way in which what they typed can meet.</summary>
public sealed class SharedFieldsTests
{
    private static readonly LastWrite Somebody = new("Wren Ashby", new DateTime(2026, 11, 25, 8, 0, 0, DateTimeKind.Utc), "Europe/Vienna");

    private readonly SharedFields _form;
    private string? _text = "before";
    private DateOnly? _day = new(2026, 11, 1);
    private bool _asksDay = true;
    private int _drawn;

    public SharedFieldsTests() =>
        _form = new SharedFields(
            () => _drawn++,
            SharedField.Words("text", "Words", () => _text, text => _text = text),
            SharedField.Day("day", "Day", () => _day, day => _day = day) with
            {
                IsAsked = () => _asksDay,
            }
        );

    [Theory]
    [InlineData("mine", "before", "mine", null)]
    [InlineData("before", "theirs", "theirs", "theirs")]
    [InlineData("both", "both", "both", null)]
    [InlineData(" before ", "theirs", "theirs", "theirs")]
    [InlineData("theirs ", "theirs", "theirs ", null)]
    [InlineData("before", "", "", "")]
    [InlineData("", "before", "", null)]
    [InlineData("", null, "", null)]
    [InlineData("before", "before", "before", null)]
    public void What_only_one_changed_comes_together_and_what_was_taken_is_told(
        string? mine,
        string? theirs,
        string? together,
        string? taken
    )
    {
        _text = mine;

        bool seen = _form.Meet(() => _text = theirs, Somebody);

        Assert.Equal(together, _text);
        Assert.Equal(taken is null ? [] : [new FieldTaken("Words", taken)], _form.Taken);
        Assert.Equal((taken is not null, taken is not null, false), (seen, _form.HasMet, _form.IsUndecided));
        Assert.Null(_form.ConflictOf("text"));
        Assert.Equal(Somebody, _form.By);
    }

    [Theory]
    [InlineData("mine", "theirs")]
    [InlineData("", "theirs")]
    [InlineData("mine", "")]
    [InlineData("mine", null)]
    public void What_both_changed_stays_as_typed_until_somebody_chooses(string mine, string? theirs)
    {
        _text = mine;

        Assert.True(_form.Meet(() => _text = theirs, null));

        Assert.Equal(mine, _text);
        Assert.Equal(new FieldConflict("text", "Words", mine, theirs ?? ""), _form.ConflictOf("text"));
        Assert.Equal(["Words"], _form.Differing);
        Assert.Empty(_form.Taken);
        Assert.True(_form.IsUndecided);
        Assert.Equal((false, false), (_form.KeepsMine("text"), _form.TakesTheirs("text")));

        _form.Choose("text", theirs: true);
        Assert.Equal(theirs, _text);
        Assert.Equal((false, false, true), (_form.IsUndecided, _form.KeepsMine("text"), _form.TakesTheirs("text")));
        Assert.Equal(mine, _form.ConflictOf("text")!.Mine);

        _form.Choose("text", theirs: false);
        Assert.Equal(mine, _text);
        Assert.Equal((false, true, false), (_form.IsUndecided, _form.KeepsMine("text"), _form.TakesTheirs("text")));
        Assert.Equal(2, _drawn);
    }

    [Fact]
    public void What_is_typed_after_both_were_shown_is_ones_own_word_and_choosing_it_keeps_it()
    {
        _text = "mine";
        _form.Meet(() => _text = "theirs", null);
        _text = "mine, and theirs";
        Assert.True(_form.IsUndecided);

        _form.Choose("text", theirs: false);

        Assert.Equal("mine, and theirs", _text);
        _form.Choose("text", theirs: true);
        _form.Choose("text", theirs: false);
        Assert.Equal("mine, and theirs", _text);
    }

    [Fact]
    public void Two_fields_are_met_each_by_itself()
    {
        _text = "mine";
        _form.Meet(() => (_text, _day) = ("before", new DateOnly(2026, 11, 9)), null);

        Assert.Equal(("mine", new DateOnly(2026, 11, 9)), (_text, _day));
        Assert.Equal("Day", Assert.Single(_form.Taken).Name);
        Assert.False(_form.IsUndecided);
    }

    [Fact]
    public void A_field_that_the_form_does_not_ask_for_keeps_nobody_from_saving()
    {
        _day = new DateOnly(2026, 11, 2);
        _form.Meet(() => _day = new DateOnly(2026, 11, 3), null);
        Assert.True(_form.IsUndecided);

        _asksDay = false;

        Assert.False(_form.IsUndecided);
        Assert.Empty(_form.Differing);
    }

    [Fact]
    public void What_was_chosen_once_is_asked_again_when_the_other_changes_it_again_and_not_otherwise()
    {
        _text = "mine";
        _form.Meet(() => _text = "theirs", null);
        _form.Choose("text", theirs: false);

        Assert.False(_form.Meet(() => _text = "theirs", null));
        Assert.Equal("mine", _text);
        Assert.True(_form.Meet(() => _text = "theirs once more", null));

        Assert.True(_form.IsUndecided);
        Assert.Equal("theirs once more", _form.ConflictOf("text")!.Theirs);
    }

    [Fact]
    public void A_form_that_was_read_anew_has_met_nobody()
    {
        _text = "mine";
        _form.Meet(() => _text = "theirs", Somebody);

        _form.Begin();

        Assert.Equal((false, false), (_form.HasMet, _form.IsUndecided));
        Assert.Null(_form.By);
        _form.Meet(() => _text = "theirs", null);
        Assert.Equal("theirs", _text);
    }
}
