using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Numerics;

namespace Trivet.Kinematics;

/// <summary>
/// A delta robot in computing form: two chains in the base frame's x–z plane, or three. Chains are in their stated order.
/// Drive readings of all chains together are a <see cref="Vec3"/> in that order; with two chains its third component is zero and
/// means nothing. Positions are of the platform reference point in the base frame, metres.
/// </summary>
public sealed record DeltaRobot(RobotFamily Family, ImmutableArray<Chain> Chains, ImmutableArray<string> ChainIds)
{
    /// <summary>How far off the plane y = 0 a point may be and still count as in a planar robot's plane: rounding, no more. Metres.</summary>
    public const double PlaneTolerance = 1e-9;

    /// <summary>Two chains: the platform moves in the plane y = 0 of the base frame only.</summary>
    public bool Planar => Chains.Length == 2;

    /// <summary>False for a point that a planar robot can not be at because it lies off its plane.</summary>
    public bool InPlane(Vec3 p) => !Planar || Math.Abs(p.Y) <= PlaneTolerance;

    /// <summary>Drive readings that put the platform at p in the working mode; a component is not a number where that rod does not
    /// reach, all of them off a planar robot's plane.</summary>
    public Vec3 Inverse(Vec3 p) => InPlane(p)
        ? new(Chains[0].Inverse(p), Chains[1].Inverse(p), Planar ? 0 : Chains[2].Inverse(p))
        : Vec3.NaN;

    /// <summary>True when every drive reading lies within its chain's travel, ends included. Not a number does not.</summary>
    public bool WithinTravel(Vec3 q)
    {
        for (int i = 0; i < Chains.Length; i++)
            if (!(q[i] >= Chains[i].TravelFrom && q[i] <= Chains[i].TravelTo)) return false;
        return true;
    }
}
