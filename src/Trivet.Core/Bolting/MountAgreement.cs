using System.Collections.Immutable;
using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Reach;

namespace Trivet.Bolting;

/// <summary>
/// One robot hangs on the frame, on the mount's screws and on the hoist: where the description says so three times, it must say the same. Common practice,
/// no source.
/// </summary>
internal static class MountAgreement
{
    private const double Gravity = 9.80665;

    /// <summary>A mount point that far from its screw does not change what the frame model says, metres.</summary>
    private const double Beside = 0.010;

    /// <summary>Masses that differ by more are two robots, as a share.</summary>
    private const double SameMass = 0.1;

    private static readonly Source Usual = new(SourceKind.CommonPractice, "");

    public static StagePlan Of(Cell cell, ImmutableArray<TimedCycle> cycles)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        Say(JointRules.MountPoints, "/frame/mountPoints", Beside, r => Points(cell, r));
        Say(JointRules.MountWeight, "/frame/robotMass", SameMass, r => Weight(cell, r));
        Say(JointRules.LiftedMass, "/handling/hanging/mass", SameMass, r => Lifted(cell, cycles, r));
        return new(findings.ToImmutable(), coverage.ToImmutable(), []);

        void Say(Rule rule, string pointer, double limit, Func<Reading, double> value)
        {
            var reading = new Reading();
            double found = value(reading);
            if (reading.Complete) findings.Add(new Judged(rule, new(pointer), reading.Inputs, found, Limit.AtMost(limit, Usual), Assurance.Exact));
            else coverage.Add(new(rule, new(pointer), JointReasons.NothingToCompare.Naming([.. reading.MissingFields])));
        }
    }

    /// <summary>Farthest distance of a mount point from the nearest screw, metres.</summary>
    private static double Points(Cell cell, Reading reading)
    {
        var x_BC = PlacingInputs.Mount(cell.Mount, reading).Inverse();
        List<Vec2> screws = [];
        foreach (var (at, joint) in Mounts(cell, reading))
        {
            double x = reading.Or(joint.AtX, $"{at}/atX", 0), y = reading.Or(joint.AtY, $"{at}/atY", 0);
            // What is wrong with the pattern is told where the joint is read.
            if (BoltPattern.Read(cell, joint.Pattern, $"{at}/pattern", reading, []) is { } pattern) screws.AddRange(pattern.Points.Select(p => new Vec2(p.X + x, p.Y + y)));
            else reading.Missing($"{at}/pattern");
        }

        reading.Used("/frame/mountPoints", string.Join('\n', cell.Frame.MountPoints.Keys));
        if (cell.Frame.MountPoints.IsEmpty) reading.Missing("/frame/mountPoints");
        double farthest = 0;
        foreach (var (id, point) in cell.Frame.MountPoints)
        {
            string at = $"/frame/mountPoints/{id}";
            var p = x_BC * new Vec3(reading.Need(point.X, at + "/x"), reading.Need(point.Y, at + "/y"), reading.Need(point.Z, at + "/z"));
            double nearest = screws.Select(s => (s - new Vec2(p.X, p.Y)).Norm).DefaultIfEmpty(double.NaN).Min();
            farthest = double.IsNaN(nearest) ? nearest : Math.Max(farthest, nearest);
        }

        return farthest;
    }

    /// <summary>Difference of the force stated from the weight, as a share of it.</summary>
    private static double Weight(Cell cell, Reading reading)
    {
        var force = Vec3.Zero;
        foreach (var (at, joint) in Mounts(cell, reading))
            force += new Vec3(reading.Or(joint.ForceX, $"{at}/forceX", 0), reading.Or(joint.ForceY, $"{at}/forceY", 0), reading.Or(joint.ForceZ, $"{at}/forceZ", 0));
        double weight = Gravity * Standing(cell, reading);
        return Math.Abs(force.Norm / weight - 1);
    }

    /// <summary>Difference of the mass lifted from that at the frame, as a share of it.</summary>
    private static double Lifted(Cell cell, ImmutableArray<TimedCycle> cycles, Reading reading)
    {
        double lifted = reading.Need(cell.Handling.Hanging.Mass, "/handling/hanging/mass"), mass = Standing(cell, reading);
        reading.Used("/motion/cycles", string.Join('\n', cell.Motion.Cycles.InOrder().Select(c => c.Key)));
        if (cycles.IsEmpty)
        {
            reading.Missing("/motion/cycles");
            return double.NaN;
        }

        reading.Used(cycles[0].Reading());
        if (cycles[0].Input?.Empty is not { } moving)
        {
            reading.Missing(CyclePlan.Pointer(cycles[0].Id));
            return double.NaN;
        }

        mass += moving.PlatformMass + moving.Chains.Sum(c => c.Carriage + c.Counterweight + c.ArmMass + c.Pair);
        return Math.Abs(lifted / mass - 1);
    }

    private static double Standing(Cell cell, Reading reading)
    {
        double mass = reading.Need(cell.Frame.RobotMass, "/frame/robotMass");
        // Nothing to be held against: that it can not be so is told where the frame is read.
        if (mass <= 0) reading.Missing("/frame/robotMass");
        return mass;
    }

    /// <summary>The joints that hold the robot's base; listed as missing where there is none.</summary>
    private static List<(string At, Joint Joint)> Mounts(Cell cell, Reading reading)
    {
        List<(string, Joint)> mounts = [];
        foreach (var (id, joint) in cell.Joints)
        {
            reading.Used($"{JointInputs.Pointer(id)}/load", joint.Load);
            if (joint.Load == JointLoad.Mount) mounts.Add((JointInputs.Pointer(id), joint));
        }

        reading.Used("/joints", string.Join('\n', cell.Joints.Keys));
        if (mounts.Count == 0) reading.Missing("/joints");
        return mounts;
    }
}
