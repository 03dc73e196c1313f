using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;

namespace Trivet.Testing;

/// <summary>Robots of symmetrical geometry for tests, described as a user would and read like one. All invented or from the named source.</summary>
public static class Robots
{
    /// <summary>Legs at −90°, 30°, 150°, as in the published examples (tests/reference/published-kinematics.md).</summary>
    public static readonly ImmutableArray<double> PublishedAzimuths = [-90, 30, 150];

    public static readonly ImmutableArray<double> EvenAzimuths = [0, 120, 240];

    /// <summary>Rail delta; lengths in metres, angles in degrees; joint circle at z = 0.</summary>
    public static DeltaRobot Rail(double baseRadius, double platformRadius, double rod, double inclination = 0, ImmutableArray<double> azimuths = default) =>
        Read(RailDescription(baseRadius, platformRadius, rod, inclination, azimuths));

    public static Robot RailDescription(double baseRadius, double platformRadius, double rod, double inclination = 0, ImmutableArray<double> azimuths = default) => new()
    {
        Family = RobotFamily.RailDelta,
        Common = new()
        {
            BaseRadius = baseRadius, BaseHeight = 0, Inclination = Degrees(inclination), Rod = rod,
            PlatformRadius = platformRadius, TravelFrom = -1, TravelTo = 1,
        },
        Chains = Named(azimuths.IsDefault ? PublishedAzimuths : azimuths),
    };

    /// <summary>Crank delta; lengths in metres; shoulders at z = 0.</summary>
    public static DeltaRobot Crank(double baseRadius, double platformRadius, double upperArm, double rod, ImmutableArray<double> azimuths = default) =>
        Read(CrankDescription(baseRadius, platformRadius, upperArm, rod, azimuths));

    public static Robot CrankDescription(double baseRadius, double platformRadius, double upperArm, double rod, ImmutableArray<double> azimuths = default) => new()
    {
        Family = RobotFamily.CrankDelta,
        Common = new()
        {
            BaseRadius = baseRadius, BaseHeight = 0, UpperArm = upperArm, Rod = rod,
            PlatformRadius = platformRadius, TravelFrom = Degrees(-60), TravelTo = Degrees(90),
        },
        Chains = Named(azimuths.IsDefault ? PublishedAzimuths : azimuths),
    };

    /// <summary>The computing form; throws with what is missing or wrong, since a test's robot must be whole.</summary>
    public static DeltaRobot Read(Robot robot)
    {
        var reading = new Reading();
        var read = RobotInputs.Geometry(robot, reading);
        return read.Robot ?? throw new InvalidOperationException(
            $"Missing: {string.Join(", ", reading.MissingFields)}. Wrong: {string.Join(", ", read.Problems)}.");
    }

    public static double Degrees(double degrees) => degrees * (Math.PI / 180);

    private static ImmutableSortedDictionary<string, ChainDescription> Named(ImmutableArray<double> azimuths)
    {
        var chains = Keyed.Empty<ChainDescription>();
        for (int i = 0; i < azimuths.Length; i++)
            chains = chains.Add(((char)('a' + i)).ToString(), new() { Order = i + 1, Azimuth = Degrees(azimuths[i]) });
        return chains;
    }
}
