using System.Reflection;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Rechecks.Watch;

namespace RehabTrack.Wording.Tests;

public sealed class NamesTests
{
    public static TheoryData<Type> NamedEnums =>
        [
            .. typeof(Names)
                .GetMethods(BindingFlags.Public | BindingFlags.Static)
                .Where(method => method.Name == nameof(Names.Of))
                .Select(method => method.GetParameters()[0].ParameterType),
        ];

    [Theory]
    [MemberData(nameof(NamedEnums))]
    public void Every_member_has_a_text_of_its_own(Type named)
    {
        MethodInfo of = typeof(Names).GetMethods().Single(method => method.Name == nameof(Names.Of) && Named(method) == named);
        string[] texts = [.. Enum.GetValues(named).Cast<object>().Select(member => (string)of.Invoke(null, [member, null])!)];

        Assert.All(texts, text => Assert.False(string.IsNullOrWhiteSpace(text)));
        Assert.Equal(texts.Length, texts.Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Every_enum_of_the_heart_that_a_page_shows_is_named()
    {
        // These are told in whole sentences, never by a name.
        Type[] told =
        [
            typeof(VerdictReason),
            typeof(RuleCode),
            typeof(AdvanceCondition),
            typeof(SuggestedMove),
            typeof(AskedStep),
            typeof(ChangeClaim),
            typeof(PermitReasonCode),
            typeof(StandingKind),
            typeof(StandingStep),
        ];
        Type[] heart = [.. typeof(Limb).Assembly.GetExportedTypes().Where(type => type.IsEnum).Except(told)];
        Type[] named = [.. typeof(Names).GetMethods().Where(method => method.Name == nameof(Names.Of)).Select(method => Named(method)!)];

        Assert.Equal([], heart.Except(named).Select(type => type.Name));
    }

    [Fact]
    public void A_member_without_a_text_is_a_bug() => Assert.Throws<ArgumentOutOfRangeException>(() => Names.Of((Limb)99));

    [Theory]
    [InlineData(Verdict.Stalled, "no progress")]
    [InlineData(Verdict.HealingSlowly, "healing slowly")]
    [InlineData(Verdict.NotYetReadable, "not yet readable")]
    public void A_verdict_is_named_in_words_of_the_yard(Verdict verdict, string expected) => Assert.Equal(expected, Names.Of(verdict));

    [Fact]
    public void The_short_limb_is_two_letters()
    {
        Assert.Equal("LH", Names.Short(Limb.LeftHind));
        Assert.Equal("–", Names.Short(Limb.Unknown));
    }

    [Fact]
    public void A_title_begins_with_a_capital()
    {
        Assert.Equal("Medial branch", Names.AsTitle(Names.Of(Part.MedialBranch)));
        Assert.Equal("", Names.AsTitle(""));
    }

    [Fact]
    public void A_draft_is_called_a_draft() => Assert.Equal("draft", Names.Of(ExaminationState.Draft));

    private static Type? Named(MethodInfo method) => method.GetParameters()[0].ParameterType;
}
