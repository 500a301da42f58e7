using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Rechecks.Tests.Anatomy;

public sealed class CodeTableTests
{
    [Fact]
    public void Every_member_but_the_unknown_has_a_code_that_finds_it_again()
    {
        Check(AnatomyCodes.Limbs, Limb.Unknown);
        Check(AnatomyCodes.Structures, Structure.Unknown);
        Check(AnatomyCodes.Parts, null);
        Check(AnatomyCodes.Landmarks, null);
        Check(AnatomyCodes.Planes, null);
        Check(ExamCodes.Stances, null);
        Check(ExamCodes.Roles, ReadingRole.None);
    }

    [Theory]
    [InlineData("accessory-ligament-ddft")]
    [InlineData("Accessory Ligament DDFT")]
    [InlineData("ACCESSORY_LIGAMENT_DDFT")]
    public void A_code_is_found_without_regard_to_case_space_hyphen_and_underscore(string text) =>
        Assert.Equal(Structure.AccessoryLigamentOfDeepDigitalFlexorTendon, AnatomyCodes.Structures.Find(text));

    [Fact]
    public void An_unknown_word_finds_nothing() => Assert.Null(AnatomyCodes.Parts.Find("hoof"));

    private static void Check<T>(CodeTable<T> table, T? without)
        where T : struct, Enum
    {
        foreach (T member in Enum.GetValues<T>())
        {
            string code = table.CodeOf(member);
            Assert.Equal(member.Equals(without), code.Length == 0);
            Assert.Equal(member.Equals(without) ? null : member, table.Find(code));
        }
    }
}
