using RehabTrack.Web.Features.Examinations;

namespace RehabTrack.Web.Tests.Features.Examinations;

public sealed class MeasurerNamesTests
{
    [Theory]
    [InlineData("Ivo Penhallick", "I. Penhallick")]
    [InlineData("I. Penhallick", "Ivo Penhallick")]
    [InlineData("Ivo Penhallick", "Ivo Penhallick")]
    public void One_person_keeps_the_name_the_case_knows(string name, string used) =>
        Assert.Equal(used, MeasurerNames.AsBefore(name, ["T. Orrel", used]));

    [Theory]
    [InlineData("Ivo Penhallick", "T. Orrel")]
    [InlineData("Ivo Penhallick", "A. Penhallick")]
    [InlineData("Penhallick", "I. Penhallick")]
    [InlineData("", "I. Penhallick")]
    public void Another_person_stays_another(string name, string used) => Assert.Equal(name, MeasurerNames.AsBefore(name, [used]));

    [Fact]
    public void Between_two_that_fit_none_is_chosen() =>
        Assert.Equal("I. Penhallick", MeasurerNames.AsBefore("I. Penhallick", ["Ivo Penhallick", "Ida Penhallick"]));
}
