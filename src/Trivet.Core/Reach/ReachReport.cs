using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>The worst margin of a station, and the finding that has it.</summary>
/// <param name="Margin">A fraction; not a number when nothing about the station is judged.</param>
/// <param name="FindingId">Id of that finding; empty when there is none.</param>
public sealed record StationMargin(string StationId, double Margin, string FindingId);

/// <summary>What a cell's robot can reach, as numbers. Lengths of the platform reference point, base frame, metres.</summary>
/// <param name="Volume">Reachable volume; null for two chains.</param>
/// <param name="Area">Reachable area in the robot's plane, square metres, for two chains; not a number for three.</param>
/// <param name="Box">Tight box of the reach, as the surface sees it.</param>
/// <param name="Cylinder">Largest upright cylinder; null for two chains.</param>
/// <param name="LargestBox">Largest upright box along the base frame's axes.</param>
/// <param name="Under">Height z of the plane that cylinder and box hang under; null where they are free in height.</param>
/// <param name="Limits">What a place must keep beyond travel to count as reached.</param>
/// <param name="Stations">Worst margins, in the order of the stations.</param>
/// <param name="HomingAlone">Per chain, in their order: how far it may be moved against the others. Empty where the ball joints are not stated.</param>
/// <param name="HomingTogether">The band in which all may differ; null where the ball joints are not stated.</param>
public sealed record ReachReport(
    VolumeEstimate? Volume, double Area, Bounds Box, UprightCylinder? Cylinder, UprightBox? LargestBox, double? Under, ReachLimits Limits, ImmutableArray<StationMargin> Stations,
    ImmutableArray<HomingAllowance> HomingAlone, HomingAllowance? HomingTogether)
{
    /// <summary>Null when the robot is not complete. The stations' margins are taken from a ledger of the same cell.</summary>
    /// <param name="under">Height z of a plane, base frame, that cylinder and box must lie under: a guard, the lower edge of a beam.</param>
    public static ReachReport? Of(Cell cell, Ledger ledger, double? under = null, ReachLimits? limits = null, CancellationToken stop = default)
    {
        if (RobotInputs.Geometry(cell.Robot, new()).Robot is not { } robot) return null;
        var set = new ReachableSet(robot, limits);
        var joints = new Reading();
        var balls = RobotInputs.Joints(cell.Robot, joints);
        var homing = joints.Complete ? new Homing(robot, balls) : null;
        var outline = robot.Planar ? ReachableVolume.VerticalSection(set, Vec3.Zero, 0) : null;
        return new(
            robot.Planar ? null : ReachableVolume.Volume(set),
            outline?.Area() ?? double.NaN,
            outline is null ? ReachableVolume.Surface(set).Box() : outline.Loops.SelectMany(l => l).Aggregate(Bounds.Nothing, (box, p) => box.With(p)),
            LargestFit.Cylinder(set, under, stop),
            LargestFit.Box(set, under, stop),
            under,
            set.Limits,
            [.. cell.Stations.InOrder().Select(s => MarginOf(s.Key, ledger))],
            homing is null ? [] : [.. robot.Chains.Select((_, i) => homing.Alone(i))],
            homing?.Together(stop: stop));
    }

    private static StationMargin MarginOf(string id, Ledger ledger)
    {
        var worst = ledger.Findings.Where(f => f.Subject.Pointer == StationInputs.Pointer(id) && !double.IsNaN(f.Margin)).MinBy(f => f.Margin);
        return new(id, worst?.Margin ?? double.NaN, worst?.Id ?? "");
    }
}
