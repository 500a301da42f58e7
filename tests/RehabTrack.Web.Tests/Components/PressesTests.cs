using RehabTrack.Web.Components;

namespace RehabTrack.Web.Tests.Components;

public sealed class PressesTests
{
    private readonly Presses _presses = new();

    [Fact]
    public void A_second_press_is_the_same_wish_until_the_answer_to_the_first_was_drawn()
    {
        Guid first = Press("sign");
        Assert.Equal(first, Press("sign"));
        _presses.Answer("sign", isDone: true);
        Assert.Equal(first, Press("sign"));

        // A drawing that was begun before the answer came does not show it.
        _presses.Drawn();
        Assert.Equal(first, Press("sign"));

        _presses.Draw();
        Assert.Equal(first, Press("sign"));
        _presses.Drawn();
        Assert.NotEqual(first, Press("sign"));
    }

    [Fact]
    public void What_was_refused_is_another_wish_at_once()
    {
        Guid first = Press("sign");

        _presses.Answer("sign", isDone: false);

        Assert.NotEqual(first, Press("sign"));
    }

    [Fact]
    public void Buttons_know_nothing_of_each_other_and_the_parts_of_a_wish_stay_together()
    {
        Guid first = Press("sign");
        string secret = _presses.Of("sign", () => "heather");
        Guid other = Press("release");
        Assert.NotEqual(first, other);

        _presses.Answer("sign", isDone: true);
        _presses.Draw();
        _presses.Drawn();

        Assert.Equal(other, Press("release"));
        Assert.Equal("heather", secret);
        Assert.Equal("anvil", _presses.Of("sign", () => "anvil"));
    }

    private Guid Press(string button) => _presses.Of(button, () => Guid.CreateVersion7());
}
