using System.Text.Json;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Start;

/// <summary>What the practice of the demo signed for the exercise of a horse, and what was done.</summary>
public sealed record DemoPlan
{
    /// <summary>The horse, by name.</summary>
    public required string Horse { get; init; }

    /// <summary>The vet who signs, by key.</summary>
    public required string Vet { get; init; }

    /// <summary>The trainer who logs, by key.</summary>
    public required string Trainer { get; init; }

    /// <summary>The plan's name.</summary>
    public required string Title { get; init; }

    /// <summary>The work for bad days; null when none is signed.</summary>
    public Work? Floor { get; init; }

    /// <summary>The steps.</summary>
    public required IReadOnlyList<PlanStep> Steps { get; init; }

    /// <summary>When the plan was signed, from its first step on.</summary>
    public required DateOnly Signed { get; init; }

    /// <summary>The first recheck.</summary>
    public required DateOnly Recheck { get; init; }

    /// <summary>The days logged.</summary>
    public required IReadOnlyList<DemoLogs> Logs { get; init; }

    /// <summary>Concerns of the trainer.</summary>
    public required IReadOnlyList<DemoConcern> Concerns { get; init; }

    /// <summary>Treatments, medicines and signs.</summary>
    public IReadOnlyList<DemoCare> Care { get; init; } = [];

    /// <summary>The decisions after it.</summary>
    public required IReadOnlyList<DemoDecision> Decisions { get; init; }

    /// <summary>Reads <c>exercise.json</c>.</summary>
    /// <exception cref="JsonException">It has another shape.</exception>
    public static IReadOnlyList<DemoPlan> Read(Stream stream) =>
        JsonSerializer.Deserialize<Plans>(stream, RecordJson.Options)?.All ?? throw new JsonException("The demo's exercise is empty.");

    private sealed record Plans([property: System.Text.Json.Serialization.JsonPropertyName("plans")] IReadOnlyList<DemoPlan> All);
}
