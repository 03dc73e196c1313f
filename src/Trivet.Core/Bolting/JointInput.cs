using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Fasteners;
using Trivet.Numerics;

namespace Trivet.Bolting;

/// <summary>One layer that is clamped, from the head on, metres.</summary>
/// <param name="Width">Across the screw; infinite where wide.</param>
public readonly record struct Layer(double Thickness, Stuff Stuff, double Width);

/// <summary>All that the calculation of a joint rests on, its load apart, SI.</summary>
/// <param name="Points">The screws, in the joint's axes, metres.</param>
/// <param name="Bearing">Outer diameter of the surface that presses on the layers, under head or washer; friction is under the head, see <see cref="Tightening"/>.</param>
/// <param name="Layers">A washer is the first of them.</param>
/// <param name="SlotNutForce">Not a number where there is no slot nut.</param>
/// <param name="Torque">Not a number where it is to be found.</param>
/// <param name="Hangs">What the screws hold hangs below the joint; otherwise it stands on it.</param>
public sealed record JointInput(
    string Id, ImmutableArray<Vec2> Points, Screw Screw, PropertyClass Class, double Bearing, ImmutableArray<Layer> Layers, ThreadIn Into, Stuff ThreadStuff,
    double Engagement, double SlotNutForce, double FrictionFrom, double FrictionTo, double FaceFriction, double WrenchScatter, Roughness Roughness, double Torque, bool Hangs)
{
    public MetricThread Thread => Screw.Thread;

    public double ClampLength => Layers.Sum(l => l.Thickness);
}

/// <summary>Force and moment of what the screws hold on the joint, about its middle, in its axes, newtons and newton metres.</summary>
/// <param name="T">Seconds from the start of the cycle; not a number for what does not move.</param>
public readonly record struct JointForce(Vec3 Force, Vec3 Moment, double T);

/// <summary>The load of a joint over all cycles.</summary>
/// <param name="Instants">At least one.</param>
/// <param name="Cycles">Where each cycle's instants begin: stress alternates within one.</param>
public sealed record JointLoadCase(ImmutableArray<JointForce> Instants, ImmutableArray<(string Cycle, int Begins)> Cycles);
