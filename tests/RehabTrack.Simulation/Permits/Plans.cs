using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Simulation.Permits;

/// <summary>Plans for stories.</summary>
public static class Plans
{
    /// <summary>Four weeks of rising walk, two weeks of walk and trot, a gate, then rising trot.</summary>
    public static PlanVersion Simple { get; } =
        new()
        {
            Id = "simple",
            Number = 1,
            Title = "Simple",
            Steps =
            [
                Step("walk", 28, new GaitRule(10, 5, 30), 0),
                Step("walk and trot", 14, new GaitRule(25), 5) with
                {
                    Gate = new Gate("sound", []),
                },
                Step("more trot", 28, new GaitRule(20), 0) with
                {
                    Trot = new GaitRule(10, 5, 20),
                    Modes = WorkModes.InHand | WorkModes.Ridden,
                },
            ],
        };

    /// <summary>One outing of walk in hand on every day, over firm ground.</summary>
    public static Work Walk(int minutes, int trot = 0) =>
        new()
        {
            Outing = new OutingMinutes(minutes, trot),
            OutingsADay = 1,
            DaysAWeek = 7,
            Modes = WorkModes.InHand,
            Surfaces = Surfaces.FirmEven,
        };

    public static PlanStep Step(string name, int days, GaitRule walk, int trot) =>
        new()
        {
            Name = name,
            Walk = walk,
            Trot = new GaitRule(trot),
            Canter = new GaitRule(0),
            Gallop = new GaitRule(0),
            OutingsADay = 1,
            DaysAWeek = 7,
            Modes = WorkModes.InHand,
            Surfaces = Surfaces.FirmEven,
            ShortestDays = days,
        };
}
