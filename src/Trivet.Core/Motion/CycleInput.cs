using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Dynamics;
using Trivet.Findings;

namespace Trivet.Motion;

/// <summary>Everything that the timing of a cycle rests on.</summary>
/// <param name="Loaded">Masses with the part in the gripper; null while they are not all described, see <paramref name="Lacking"/>.</param>
/// <param name="Empty">And without.</param>
/// <param name="Reflected">Inertia of rotor and transmission at each axis' drive coordinate, in the order of the axes; zero where not described.</param>
/// <param name="Lacking">Pointers of masses that are not stated.</param>
/// <param name="Inputs">Pointers of everything read.</param>
public sealed record CycleInput(
    CyclePlan Plan, ControllerSettings Settings, ImmutableArray<AxisCapacity> Axes, RobotDynamics? Loaded, RobotDynamics? Empty,
    ImmutableArray<double> Reflected, ImmutableArray<string> Lacking, ImmutableArray<string> Inputs)
{
    /// <summary>What became of reading it.</summary>
    public readonly record struct Outcome(CycleInput? Input, ImmutableArray<Contradiction> Contradictions, Reason? NotJudged);

    public static Outcome Read(Cell cell, string id, Reading reading) => Read(cell, id, reading, CycleInputs.Read(cell, id, reading));

    /// <param name="read">The geometry, as it was read into the same reading.</param>
    internal static Outcome Read(Cell cell, string id, Reading reading, CycleRead read)
    {
        var wrong = ImmutableArray.CreateBuilder<Contradiction>();
        wrong.AddRange(read.Contradictions);
        var settings = ControllerSettings.Read(cell, id, reading, wrong);
        string? part = cell.Motion.Cycles[id].Part;
        reading.Used($"{CyclePlan.Pointer(id)}/part", part);
        if (part is not null && !cell.Brief.Parts.ContainsKey(part))
        {
            reading.Used("/brief/parts", string.Join('\n', cell.Brief.Parts.Keys));
            wrong.Add(new($"{CyclePlan.Pointer(id)}/part", MotionReasons.NoSuchPart.Naming([.. cell.Brief.Parts.Keys.Select(p => $"/brief/parts/{p}")])));
        }
        if (read.Plan is not { } plan || settings is null || wrong.Count > 0) return new(null, wrong.ToImmutable(), read.NotJudged);

        var axes = AxisCapacity.Read(cell, reading);
        var masses = new Reading();
        RobotDynamics? loaded = DynamicsInputs.Read(cell, part, masses).Dynamics, empty = DynamicsInputs.Read(cell, null, masses).Dynamics;
        reading.Used(masses);
        var rotors = new Reading();
        ImmutableArray<double> reflected = [.. axes.Select(a => DriveInputs.Read(cell, a.Axis, rotors).Drive?.ReflectedInertia ?? 0)];
        reading.Used(rotors);
        return new(new(plan, settings, axes, empty is null ? null : loaded, loaded is null ? null : empty, reflected, masses.MissingFields, reading.Inputs), [], null);
    }
}
