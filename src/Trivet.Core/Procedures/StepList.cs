using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Faults;
using Trivet.Findings;

namespace Trivet.Procedures;

/// <summary>What of the robot stands in the cell while steps are added.</summary>
internal enum Fitted
{
    Nothing,
    /// <summary>Base and carriages or arms; rods and platform not yet.</summary>
    Carriages,
    Whole,
}

/// <summary>Gathers the steps of one cell in order. What a step looked at through <see cref="Reading"/> is what it depends on.</summary>
internal sealed class StepList(Cell cell, ImmutableArray<JointTorque> torques)
{
    private readonly List<Step> _steps = [];
    private readonly List<Gap> _gaps = [];
    private readonly HashSet<string> _ids = new(StringComparer.Ordinal);

    public Cell Cell => cell;

    public ImmutableArray<JointTorque> Torques => torques;

    public ImmutableArray<Gap> Gaps => [.. _gaps];

    public bool CameAssembled => cell.Robot.CameAssembled == true;

    public Fitted Fitted { get; set; }

    /// <summary>Ids of the steps that others stand behind, by what they are to those.</summary>
    public Dictionary<Gate, ImmutableArray<string>> Gates { get; } = [];

    public ImmutableArray<string> After(params ReadOnlySpan<Gate> gates)
    {
        var after = ImmutableArray.CreateBuilder<string>();
        foreach (var gate in gates)
            if (Gates.TryGetValue(gate, out var ids)) after.AddRange(ids);
        return [.. after.Distinct()];
    }

    /// <summary>Chains in their order, then the axes beside them that are fitted: id and pointer.</summary>
    public ImmutableArray<(string Id, string Pointer)> Axes =>
    [
        .. cell.Robot.Chains.InOrder().Select(c => (c.Key, $"/robot/chains/{c.Key}")),
        .. cell.Robot.LinearAxis.Fitted == true ? [("linear", "/robot/linearAxis")] : Array.Empty<(string, string)>(),
        .. cell.Robot.Rotary.Fitted == true ? [("rotary", "/robot/rotary")] : Array.Empty<(string, string)>(),
    ];

    /// <summary>An axis whose coordinate is an angle, by id: radians in its readings, else metres.</summary>
    public bool Turns(string? axis) => axis == "rotary" || (cell.Robot.Family == RobotFamily.CrankDelta && axis != "linear");

    /// <summary>Adds a step that depends on what <paramref name="reading"/> read.</summary>
    /// <param name="of">What it is done to, for its id; empty for a step that is there once.</param>
    /// <returns>Its id.</returns>
    public string Add(string kind, string of, string pointer, StepPlace place, EnergyLevel energy, Skill by, double minutes, ImmutableArray<string> after, Reading reading, Func<Step, Step>? more = null)
    {
        string id = of.Length == 0 ? kind : $"{kind}:{of}";
        if (!_ids.Add(id)) throw new InvalidOperationException($"The step {id} is there twice.");
        var held = Held(energy, reading);
        var step = new Step
        {
            Id = id, Kind = kind, Subject = new(pointer), Place = place, Energy = energy, By = by, Minutes = minutes, After = [.. after.Where(_ids.Contains)], Held = held,
        };
        step = more?.Invoke(step) ?? step;
        _steps.Add(step with { Inputs = reading.Inputs });
        if (!reading.Complete) _gaps.Add(new(id, reading.MissingFields));
        return id;
    }

    /// <summary>The steps, what they stand behind told once: a step that another one already stands behind is left out.</summary>
    public ImmutableArray<Step> Done()
    {
        var ancestors = new Dictionary<string, HashSet<string>>(StringComparer.Ordinal);
        var done = ImmutableArray.CreateBuilder<Step>(_steps.Count);
        foreach (var step in _steps)
        {
            var further = step.After.SelectMany(a => ancestors[a]).ToHashSet(StringComparer.Ordinal);
            done.Add(step with { After = [.. step.After.Where(a => !further.Contains(a)).Distinct()] });
            further.UnionWith(step.After);
            ancestors[step.Id] = further;
        }
        return done.MoveToImmutable();
    }

    /// <summary>
    /// What keeps each chain up. A chain whose drive is on is held by it only while all move; while one axis is tried it stands over a prop, and what nothing
    /// holds stands over a prop always.
    /// </summary>
    private ImmutableArray<ChainHeld> Held(EnergyLevel energy, Reading reading)
    {
        reading.Used("/robot/chains", string.Join('\n', cell.Robot.Chains.InOrder().Select(c => c.Key)));
        if (Fitted == Fitted.Nothing) return [.. cell.Robot.Chains.InOrder().Select(c => new ChainHeld(c.Key, "not fitted"))];
        reading.Used("/robot/common/holding", cell.Robot.Common.Holding);
        return [.. cell.Robot.Chains.InOrder().Select(c => new ChainHeld(c.Key, By(c.Key, c.Value)))];

        string By(string id, ChainDescription chain)
        {
            reading.Used($"/robot/chains/{id}/holding", chain.Holding);
            return energy switch
            {
                EnergyLevel.AllAxes => "drive",
                EnergyLevel.OneAxis or EnergyLevel.OneAxisLimited => "prop",
                _ => (chain.Holding ?? cell.Robot.Common.Holding) switch
                {
                    Holding.Brake => "brake",
                    Holding.Counterweight => "counterweight",
                    Holding.Friction => "friction",
                    _ => "prop",
                },
            };
        }
    }
}

/// <summary>What later steps stand behind.</summary>
internal enum Gate
{
    Goods,
    Bench,
    Site,
    Frame,
    Robot,
    Rail,
    Cables,
    Rotary,
    BeforePower,
    ControlOn,
    StopChain,
    Control,
    Inputs,
    FirstEnable,
    Identified,
    Complete,
    Homed,
    Tool,
    Gripping,
    Proved,
    Accepted,
}
