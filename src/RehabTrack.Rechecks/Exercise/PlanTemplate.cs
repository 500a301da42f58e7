namespace RehabTrack.Rechecks.Exercise;

/// <summary>A template of a plan, from <c>shared/plans</c>: data to copy and to adapt to the horse. It permits nothing by itself.</summary>
public sealed record PlanTemplate
{
    /// <summary>Its name, which is its file name without ending, for example <c>sdft-severe</c>.</summary>
    public required string Name { get; init; }

    /// <summary>The version of its table.</summary>
    public required int Version { get; init; }

    /// <summary>Its title.</summary>
    public required string Title { get; init; }

    /// <summary>What it is for, and what its source leaves open.</summary>
    public required string About { get; init; }

    /// <summary>Where it comes from; <c>from memory</c> where it could not be read at its source.</summary>
    public required string Source { get; init; }

    /// <summary>The steps.</summary>
    public required IReadOnlyList<PlanStep> Steps { get; init; }

    /// <summary>The source of each step, in the order of the steps.</summary>
    public required IReadOnlyList<string> StepSources { get; init; }

    /// <summary>The caps.</summary>
    public required PlanCaps Caps { get; init; }

    /// <summary>A plan version with the steps and caps of this template and no floor, for a vet to adapt and sign.</summary>
    /// <param name="id">The identity of the version.</param>
    /// <param name="number">Its number, from 1.</param>
    public PlanVersion ToPlan(string id, int number) =>
        new()
        {
            Id = id,
            Number = number,
            Title = Title,
            Template = Name,
            Steps = Steps,
            Caps = Caps,
        };
}
