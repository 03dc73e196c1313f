using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Gripping;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Tooling;

namespace Trivet.Bolting;

/// <summary>
/// The load of a joint over the cycles, as the controller drives them. Mount: the robot's reaction on its mount, brought to the joint's middle; what does not move of
/// the robot's base is not in it and may be stated. Tool: what hangs below the joint, and the part while it is held, with the platform's acceleration and the
/// rotary axis' turning. Motion counts with the load factor, weight without: over a whole cycle the mean of the reaction is the weight.
/// </summary>
public static class JointLoads
{
    /// <summary>Reads the load and says how to work it out; null where there is none yet: nothing moves, or its masses are not described.</summary>
    public static Func<JointLoadCase>? Of(Cell cell, string id, ImmutableArray<TimedCycle> cycles, Reading reading, ICollection<Contradiction> wrong)
    {
        string at = JointInputs.Pointer(id);
        var joint = cell.Joints[id];
        var kind = reading.Need(joint.Load, $"{at}/load", JointLoad.Stated);
        Vec3 Stated(double? x, double? y, double? z, string name) =>
            new(reading.Or(x, $"{at}/{name}X", 0), reading.Or(y, $"{at}/{name}Y", 0), reading.Or(z, $"{at}/{name}Z", 0));
        Vec3 force = Stated(joint.ForceX, joint.ForceY, joint.ForceZ, "force"), moment = Stated(joint.MomentX, joint.MomentY, joint.MomentZ, "moment");
        if (kind == JointLoad.Stated) return () => new([new(force, moment, double.NaN)], [("", 0)]);

        double factor = reading.Or(joint.LoadFactor, $"{at}/loadFactor", FaultStop.UsualFactor);
        if (!(factor > 0)) wrong.Add(new($"{at}/loadFactor", JointReasons.NotPositive));
        foreach (var cycle in cycles) reading.Used(cycle.Reading());
        var of = kind == JointLoad.Mount ? Mount(joint, at, reading) : Tool(cell, joint, at, cycles, reading, wrong);
        bool known = cycles.All(c => c.Moves && (kind == JointLoad.Tool || c.HasMasses));
        return cycles.IsEmpty || !known ? null : Gathered;

        JointLoadCase Gathered()
        {
            var instants = ImmutableArray.CreateBuilder<JointForce>();
            var begins = ImmutableArray.CreateBuilder<(string, int)>();
            foreach (var cycle in cycles)
            {
                begins.Add((cycle.Id, instants.Count));
                foreach (var load in of(cycle, factor)) instants.Add(new(load.Force + force, load.Moment + moment, load.T));
            }
            return new(instants.ToImmutable(), begins.ToImmutable());
        }
    }

    private static Func<TimedCycle, double, IEnumerable<JointForce>> Mount(Joint joint, string at, Reading reading)
    {
        Vec3 middle = new(reading.Or(joint.AtX, $"{at}/atX", 0), reading.Or(joint.AtY, $"{at}/atY", 0), reading.Or(joint.AtZ, $"{at}/atZ", 0));
        return (cycle, factor) =>
        {
            var reaction = cycle.Trace!.Reaction!;
            var forces = reaction.Force_B;
            Vec3[] moments = [.. reaction.Moment_B.Select((m, i) => m - middle.Cross(forces[i]))];
            Vec3 weight = Mean(reaction.Time, forces), tilt = Mean(reaction.Time, moments);
            return forces.Select((f, i) => new JointForce(weight + factor * (f - weight), tilt + factor * (moments[i] - tilt), reaction.Time[i]));
        };
    }

    private static Func<TimedCycle, double, IEnumerable<JointForce>> Tool(
        Cell cell, Joint joint, string at, ImmutableArray<TimedCycle> cycles, Reading reading, ICollection<Contradiction> wrong)
    {
        reading.Used($"{at}/carriesFrom", joint.CarriesFrom);
        var stack = ToolInputs.Read(cell, reading);
        var elements = stack.Elements;
        double top = 0;
        if (joint.CarriesFrom is { } first)
        {
            if (elements.FirstOrDefault(e => e.Id == first) is { } from) (elements, top) = ([.. stack.From(from)], from.Top);
            else wrong.Add(new($"{at}/carriesFrom", JointReasons.NoSuchPart));
        }
        Vec3 face = new(0, 0, top);
        bool turns = cell.Robot.Rotary.Fitted == true;
        var parts = cycles.ToDictionary(c => c.Id, c => cell.Motion.Cycles[c.Id].Part is { } part ? ToolInputs.Carried(cell, part, reading) : null);
        return (cycle, factor) =>
        {
            var motion = CarriedMotion.Of(cell, cycle)!;
            var held = parts[cycle.Id];
            return motion.Instants.Select(instant =>
            {
                Vec3 force = Vec3.Zero, moment = Vec3.Zero;
                foreach (var e in elements) Add(e.Body, e.Turns);
                if (instant.PartHeld && held is { } body) Add(body, turns);
                return new JointForce(force, moment, instant.T);

                void Add(MassProperties body, bool turning)
                {
                    // Felt is acceleration less free fall; the factor counts for the acceleration alone.
                    var g = motion.Gravity_B;
                    var f = -body.Mass * (factor * (instant.Felt(body.Centre, g, turning) + g) - g);
                    var r = turning ? Mat3.RotationZ(instant.State.Turn.Angle) * body.Centre : body.Centre;
                    force += f;
                    moment += (r - face).Cross(f);
                    if (turning && body.InertiaKnown) moment -= factor * instant.State.Turn.Acceleration * (body.Inertia * Vec3.UnitZ);
                }
            });
        };
    }

    /// <summary>Mean over time, straight between the times.</summary>
    private static Vec3 Mean(ImmutableArray<double> time, IReadOnlyList<Vec3> values)
    {
        var sum = Vec3.Zero;
        for (int i = 1; i < time.Length; i++) sum += (time[i] - time[i - 1]) / 2 * (values[i] + values[i - 1]);
        double span = time[^1] - time[0];
        return span > 0 ? sum / span : values[0];
    }
}
