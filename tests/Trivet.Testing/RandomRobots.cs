using System.Collections.Immutable;
using CsCheck;
using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;
using static Trivet.Testing.FixedCases;

namespace Trivet.Testing;

/// <summary>Robots of which no two chains are alike, each with a platform position that all rods reach, in the working mode.</summary>
public static class RandomRobots
{
    public static readonly Gen<(DeltaRobot Robot, Vec3 P)> Rails = Of(RobotFamily.RailDelta, [0, 2.1, 4.2]);
    public static readonly Gen<(DeltaRobot Robot, Vec3 P)> Cranks = Of(RobotFamily.CrankDelta, [0, 2.1, 4.2]);
    public static readonly Gen<(DeltaRobot Robot, Vec3 P)> PlanarRails = Of(RobotFamily.RailDelta, [0, Math.PI]);
    public static readonly Gen<(DeltaRobot Robot, Vec3 P)> PlanarCranks = Of(RobotFamily.CrankDelta, [0, Math.PI]);
    public static readonly Gen<(DeltaRobot Robot, Vec3 P)> All = Gen.OneOf(Rails, Cranks, PlanarRails, PlanarCranks);

    private static Gen<(DeltaRobot Robot, Vec3 P)> Of(RobotFamily family, ImmutableArray<double> azimuths)
    {
        bool planar = azimuths.Length == 2;
        double crooked = planar ? 0 : 1;
        var unit = Between(-1, 1);
        var chain = Gen.Select(unit.Array[12], numbers => numbers);
        return Gen.Select(chain.Array[azimuths.Length], unit, unit, unit, (numbers, x, y, z) =>
        {
            var chains = Keyed.Empty<ChainDescription>();
            for (int i = 0; i < azimuths.Length; i++)
            {
                var n = numbers[i];
                chains = chains.Add(((char)('a' + i)).ToString(), new()
                {
                    Order = i, Azimuth = azimuths[i] + crooked * 0.2 * n[0],
                    BaseRadius = 0.3 + 0.03 * n[1], BaseHeight = -0.05 + 0.03 * n[2], BaseSideOffset = crooked * 0.02 * n[3],
                    Inclination = 0.2 + 0.2 * n[4], SideLean = crooked * 0.1 * n[5],
                    UpperArm = 0.25 + 0.03 * n[6], Rod = 0.6 + 0.05 * n[7],
                    PlatformRadius = 0.05 + 0.01 * n[8], PlatformHeight = 0.02 * n[9], PlatformSideOffset = crooked * 0.01 * n[10],
                    HomeOffset = 0.1 * n[11], TravelFrom = -2, TravelTo = 2,
                });
            }
            var robot = Robots.Read(new() { Family = family, Chains = chains });
            return (robot, new Vec3(0.1 * x, planar ? 0 : 0.1 * y, -0.6 + 0.1 * z));
        });
    }
}
