using RehabTrack.Web.Components.Forms;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Exercise;

/// <summary>The grades of lameness to choose from, by the AAEP scale.</summary>
public static class LamenessChoices
{
    /// <summary>Not looked for, then 0 to 5.</summary>
    public static IReadOnlyList<Choice<int?>> All { get; } =
    [
        new(null, DecisionPage.LamenessNot),
        new(0, DecisionPage.LamenessGrade_0),
        new(1, DecisionPage.LamenessGrade_1),
        new(2, DecisionPage.LamenessGrade_2),
        new(3, DecisionPage.LamenessGrade_3),
        new(4, DecisionPage.LamenessGrade_4),
        new(5, DecisionPage.LamenessGrade_5),
    ];
}
