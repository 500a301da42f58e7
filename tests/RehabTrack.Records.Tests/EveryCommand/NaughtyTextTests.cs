using RehabTrack.Naughty;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Imports;

namespace RehabTrack.Records.Tests.EveryCommand;

/// <summary>
/// Text that has broken other programs, in every text field of every command, on a real database file. Either the same letters are kept,
/// trimmed, or a problem names the field; nothing throws, and nothing is kept that was not written.
/// </summary>
public sealed class NaughtyTextTests
{
    /// <summary>Text that the program makes and checks itself, no person types it: it may be refused, and no text is to be found again.</summary>
    private static readonly HashSet<string> Codes = new(StringComparer.Ordinal)
    {
        "AcknowledgeFinding.Seen.Key",
        "AmendExamination.SeenHash",
        "ApplyImport.Cases[].Course.Id",
        "ApplyImport.Cases[].Course.Examinations[].Id",
        "ApplyImport.Cases[].Course.Examinations[].Readings[].Id",
        "ApplyImport.Cases[].Horse.Microchip",
        "BreakLink.First.ExaminationId",
        "BreakLink.Second.ExaminationId",
        "ChangePractice.Language",
        "ChangePractice.TimeZone",
        "InvitePerson.SecretHash",
        "PinLink.First.ExaminationId",
        "PinLink.Second.ExaminationId",
        "RememberMapping.Fingerprint",
        "RememberMapping.Mapping",
        "RenewFeed.SecretHash",
        "RenewShare.SecretHash",
        "SaveCare.Entry.CaseId",
        "SaveDraft.Typed",
        "SaveHorse.Microchip",
        "SaveHorsePhoto.ContentType",
        "SavePerson.Language",
        "SavePlanDraft.Plan.Id",
        "SettleReminder.Trouble",
        "SignDecision.Decision.PlanVersionId",
        "SignDecision.Decision.SignedBy",
        "SignExamination.SeenHash",
    };

    /// <summary>Lists that the usual input has empty, and that hold nothing but codes.</summary>
    private static readonly string[] EmptyLists = ["ChangePractice.Settings.Rules.SwitchedOff"];

    public static TheoryData<string> Commands =>
        [.. Asked.Commands.Where(type => FreeOf(type).Any()).Select(type => type.Name).Order(StringComparer.Ordinal)];

    public static TheoryData<string> CommandsWithCodes =>
        [.. Codes.Where(IsAnswered).Select(code => code.Split('.')[0]).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    [Fact]
    public async Task The_inputs_that_are_tried_reach_every_text_field_there_is()
    {
        await using Scene scene = await Scene.BuildAsync();
        List<string> missed = [];
        foreach (Type command in Asked.Commands)
        {
            HashSet<string> reached = new(StringComparer.Ordinal);
            string[] fields = [.. TextFields.Of(Asked.InputOf(command))];
            TextFields.With(
                await ValidInputs.MakeAsync(command, scene),
                fields.ToDictionary(field => field, _ => "x", StringComparer.Ordinal),
                reached
            );
            missed.AddRange(fields.Except(reached, StringComparer.Ordinal).Select(field => $"{command.Name}.{field}"));
        }

        Assert.Equal(EmptyLists, missed);
    }

    [Fact]
    public void Every_field_that_is_named_as_made_by_the_program_exists() =>
        Assert.Equal(
            [],
            Codes.Except(Asked.Commands.SelectMany(type => TextFields.Of(Asked.InputOf(type)).Select(field => $"{type.Name}.{field}")))
        );

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task Is_kept_letter_by_letter_or_refused_at_its_field(string name)
    {
        Type command = Asked.Commands.Single(type => type.Name == name);
        await using Scene scene = await Scene.BuildAsync();
        List<string> wrong = [];

        // Where a page is too long, or one of its strings is refused, the same strings come in lines.
        IReadOnlySet<string> refused = await TryAllAsync(scene, command, [.. FreeOf(command)], NaughtyStrings.Pages, wrong);
        await TryAllAsync(scene, command, [.. refused], NaughtyStrings.Packs, wrong);

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
    }

    /// <summary>Every text in every field; in one turn every field has another. Yields the fields that refused any.</summary>
    private static async Task<IReadOnlySet<string>> TryAllAsync(
        Scene scene,
        Type command,
        string[] fields,
        IReadOnlyList<string> texts,
        List<string> wrong
    )
    {
        HashSet<string> refused = new(StringComparer.Ordinal);
        for (int turn = 0; turn < texts.Count && fields.Length > 0; turn++)
        {
            Dictionary<string, string> tried = fields
                .Select((field, at) => (field, Text: texts[(turn + at) % texts.Count]))
                .ToDictionary(pair => pair.field, pair => pair.Text, StringComparer.Ordinal);
            refused.UnionWith(await TryAsync(scene, command, tried, wrong));
        }

        return refused;
    }

    /// <summary>Alone, where a pack would hide what only stands at the start or end of a text; and what no list can hold.</summary>
    [Fact]
    public async Task Each_string_alone_is_kept_as_a_horses_markings()
    {
        await using Scene scene = await Scene.BuildAsync();
        List<string> wrong = [];
        foreach (string text in NaughtyStrings.All)
        {
            await TryAsync(scene, typeof(SaveHorse), new(StringComparer.Ordinal) { ["Name"] = $"h{text}", ["Markings"] = text }, wrong);
        }

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task What_cannot_be_kept_as_it_is_or_is_longer_than_any_text_is_refused_at_its_field(string name)
    {
        Type command = Asked.Commands.Single(type => type.Name == name);
        await using Scene scene = await Scene.BuildAsync();
        List<string> wrong = [];
        foreach (string field in FreeOf(command))
        {
            foreach (string text in (string[])["before\0after", "half \uD83D letter", new string('x', 100_000)])
            {
                await TryAsync(scene, command, new(StringComparer.Ordinal) { [field] = text }, wrong, isRefused: true);
            }
        }

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
    }

    [Theory]
    [MemberData(nameof(CommandsWithCodes))]
    public async Task What_the_program_makes_itself_may_be_refused_and_breaks_nothing(string name)
    {
        Type command = Asked.Commands.Single(type => type.Name == name);
        await using Scene scene = await Scene.BuildAsync();
        foreach (
            string field in TextFields.Of(Asked.InputOf(command)).Where(field => Codes.Contains($"{name}.{field}") && IsAnswered(field))
        )
        {
            foreach (
                string text in NaughtyStrings.Packs.Where((_, at) => at % 20 == 0).Append("before\0after").Append(new string('x', 100_000))
            )
            {
                object input = TextFields.With(
                    await ValidInputs.MakeAsync(command, scene),
                    new Dictionary<string, string>(StringComparer.Ordinal) { [field] = text },
                    new HashSet<string>(StringComparer.Ordinal)
                );

                Asked answer = await Asked.AskAsync(scene, command, input);

                Assert.All(answer.Problems, problem => Assert.NotEmpty(problem.Code));
            }
        }
    }

    /// <summary>The hash of a secret is never a person's: a wrong one is a bug, and thrown.</summary>
    private static bool IsAnswered(string field) => !field.EndsWith("SecretHash", StringComparison.Ordinal);

    private static IEnumerable<string> FreeOf(Type command) =>
        TextFields
            .Of(Asked.InputOf(command))
            .Where(field => !Codes.Contains($"{command.Name}.{field}"))
            .Where(field => !EmptyLists.Contains($"{command.Name}.{field}", StringComparer.Ordinal));

    /// <summary>Yields the fields that refused their text.</summary>
    private static async Task<IReadOnlyCollection<string>> TryAsync(
        Scene scene,
        Type command,
        Dictionary<string, string> tried,
        List<string> wrong,
        bool isRefused = false
    )
    {
        List<string> refusing = [];
        while (tried.Count > 0)
        {
            object input = TextFields.With(await ValidInputs.MakeAsync(command, scene), tried, new HashSet<string>(StringComparer.Ordinal));
            Asked answer = await Asked.AskAsync(scene, command, input);
            if (answer.Problems.Count == 0)
            {
                HashSet<string> kept = KeptText.Of(scene.House.Database);
                wrong.AddRange(
                    tried
                        .Keys.Where(field => isRefused || (!IsKept(kept, tried[field]) && !IsUnwritten(command, field)))
                        .Select(field => $"{command.Name}.{field}: {Shown(tried[field])}")
                );
                return refusing;
            }

            string[] refused = [.. tried.Keys.Where(field => answer.Problems.Any(problem => IsOf(problem, field)))];
            if (refused.Length == 0)
            {
                wrong.Add(
                    $"{command.Name} [{string.Join(',', tried.Keys)}]: {string.Join(", ", answer.Problems.Select(one => $"{one.Field}={one.Code}"))} for {Shown(tried.Values.First())}"
                );
                return refusing;
            }

            foreach (string field in refused)
            {
                tried.Remove(field);
            }

            refusing.AddRange(refused);
        }

        return refusing;
    }

    /// <summary>A reason for amending is written only where something is amended.</summary>
    private static bool IsUnwritten(Type command, string field) => command == typeof(ApplyImport) && field == "Choices.Reason";

    private static bool IsKept(HashSet<string> kept, string text) =>
        string.IsNullOrWhiteSpace(text) || kept.Contains(text.Trim()) || kept.Contains(text);

    /// <summary>A problem names a field as its page does: the last name of the path, or the row it stands in.</summary>
    private static bool IsOf(Problem problem, string field) =>
        NamesRow(problem, field)
        || Names(field)
            .Any(name => problem.Field.Replace("_", "", StringComparison.Ordinal).EndsWith(name, StringComparison.OrdinalIgnoreCase));

    private static bool NamesRow(Problem problem, string field) =>
        field.IndexOf("[]", StringComparison.Ordinal) is > 0 and var end
        && problem.Field.StartsWith($"{field[..end]}[", StringComparison.OrdinalIgnoreCase)
        && problem.Field.EndsWith(']');

    private static IEnumerable<string> Names(string field)
    {
        string last = field[(field.LastIndexOf('.') + 1)..].Trim('[', ']', '{', '}');
        return Aliases.TryGetValue(last, out string? other) ? [last, other] : [last];
    }

    private static readonly Dictionary<string, string> Aliases = new(StringComparer.Ordinal)
    {
        ["ContentType"] = "photo",
        ["ExaminationId"] = "examination",
        ["CaseId"] = "case",
        ["Key"] = "finding",
        ["PlanVersionId"] = "plan",
        ["Criteria"] = "gate",
        ["Note"] = "visitNote",
    };

    private static string Shown(string text) =>
        string.Concat(text.Take(40).Select(letter => letter is >= ' ' and < '\u007F' ? $"{letter}" : $"\\u{(int)letter:X4}"));
}
