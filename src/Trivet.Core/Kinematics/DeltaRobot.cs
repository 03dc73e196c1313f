using System.Collections.Immutable;
using Trivet.Cells;

namespace Trivet.Kinematics;

/// <summary>
/// A delta robot in computing form: two chains in the base frame's x–z plane, or three. Chains are in their stated order.
/// </summary>
public sealed record DeltaRobot(RobotFamily Family, ImmutableArray<Chain> Chains, ImmutableArray<string> ChainIds)
{
    /// <summary>Two chains: the platform moves in the plane y = 0 of the base frame only.</summary>
    public bool Planar => Chains.Length == 2;
}
