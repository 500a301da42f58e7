namespace RehabTrack.Records.Tests.EveryCommand;

/// <summary>A double click, and a retry after an answer that was lost on the way: each command does once what it is asked twice.</summary>
public sealed class TwiceTests
{
    /// <summary>What leaves no line in the history: a file before it is imported, a form that is being filled in, an end of no session, a look at a permit, a threshold that was the table's already.</summary>
    private static readonly HashSet<string> Unnoted = new(StringComparer.Ordinal)
    {
        "EndSession",
        "KeepTyped",
        "NoteLook",
        "StageImportFile",
        "TakeError",
    };

    public static TheoryData<string> Commands => [.. Asked.Commands.Select(type => type.Name).Order(StringComparer.Ordinal)];

    [Fact]
    public void Every_command_there_is_is_tried() =>
        Assert.Equal(
            Asked.Commands.Select(type => type.Name).Order(StringComparer.Ordinal),
            ValidInputs.Commands.Select(type => type.Name).Order(StringComparer.Ordinal)
        );

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task Asked_twice_with_one_command_id_it_answers_the_same_and_changes_once(string name)
    {
        await using Scene scene = await Scene.BuildAsync();
        Type command = Asked.Commands.Single(type => type.Name == name);
        object input = await ValidInputs.MakeAsync(command, scene);
        long before = KeptText.Changes(scene.House.Database);

        Asked first = await Asked.AskAsync(scene, command, input);
        long after = KeptText.Changes(scene.House.Database);
        string[] kept = [.. KeptText.Of(scene.House.Database).Order(StringComparer.Ordinal)];
        Asked second = await Asked.AskAsync(scene, command, input);

        Assert.Equal([], first.Problems.Select(problem => $"{problem.Field}: {problem.Code}"));
        Assert.Equal([], second.Problems.Select(problem => $"{problem.Field}: {problem.Code}"));
        Assert.Equal(!Unnoted.Contains(name), after > before);
        Assert.Equal(after, KeptText.Changes(scene.House.Database));
        Assert.Equal(kept, KeptText.Of(scene.House.Database).Order(StringComparer.Ordinal));
        Assert.Equivalent(first.Value, second.Value, strict: true);
    }

    /// <summary>Two clicks that are on their way at the same time.</summary>
    [Theory]
    [MemberData(nameof(Commands))]
    public async Task Asked_twice_at_the_same_moment_it_changes_once(string name)
    {
        await using Scene scene = await Scene.BuildAsync();
        Type command = Asked.Commands.Single(type => type.Name == name);
        object input = await ValidInputs.MakeAsync(command, scene);

        Asked[] both = await Task.WhenAll(Enumerable.Range(0, 2).Select(_ => Task.Run(() => Asked.AskAsync(scene, command, input))));

        Assert.All(both, one => Assert.Equal([], one.Problems.Select(problem => $"{problem.Field}: {problem.Code}")));
        Assert.Equivalent(both[0].Value, both[1].Value, strict: true);
    }
}
