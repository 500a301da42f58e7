using Microsoft.Extensions.Configuration;
using RehabTrack.Records.Rights;
using RehabTrack.Web.Account;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Account;

public sealed class SecondStepPolicyTests
{
    [Theory]
    [InlineData(null, new[] { Role.Administrator, Role.Vet })]
    [InlineData("", new Role[0])]
    [InlineData("vet", new[] { Role.Vet })]
    [InlineData(" Vet , assistant,ADMINISTRATOR,", new[] { Role.Administrator, Role.Vet, Role.Assistant })]
    public void Whose_sign_in_needs_a_second_step_is_a_setting_and_without_it_vets_and_administrators(string? said, Role[] asked) =>
        Assert.Equal(asked, Enum.GetValues<Role>().Where(SecondStepPolicy.Read(With(said)).Asks));

    [Theory]
    [InlineData("Vet,Nurse", "Nurse")]
    [InlineData("1", "1")]
    public void A_role_that_does_not_exist_refuses_the_start_with_its_name_and_those_that_do(string said, string wrong)
    {
        StartRefusedException refused = Assert.Throws<StartRefusedException>(() => SecondStepPolicy.Read(With(said)));

        Assert.Contains(wrong, refused.Message, StringComparison.Ordinal);
        Assert.Contains(SecondStepPolicy.Setting, refused.Message, StringComparison.Ordinal);
        Assert.Contains(nameof(Role.Assistant), refused.Message, StringComparison.Ordinal);
    }

    private static IConfiguration With(string? said) =>
        new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?> { [SecondStepPolicy.Setting] = said }).Build();
}
