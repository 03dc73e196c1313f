using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Kinematics;

/// <summary>What became of reading a robot. <see cref="Robot"/> is null while a field is missing (the reading lists it) or a problem stands.</summary>
public sealed record RobotRead(DeltaRobot? Robot, ImmutableArray<Contradiction> Problems);

/// <summary>The two equal rods of a chain, set apart along <see cref="Chain.Side"/>.</summary>
/// <param name="Spacing">Distance between their centre lines, metres.</param>
/// <param name="Diameter">Diameter of a rod, metres.</param>
public readonly record struct RodPair(double Spacing, double Diameter);

/// <summary>The ball joints at both ends of a chain's rods.</summary>
/// <param name="Limit">Largest swing each way, radians.</param>
/// <param name="SeatAngle">Seat: angle of its axis below the horizontal inward direction, radians. Cross bar: not used (zero).</param>
public readonly record struct BallJoint(JointKind Kind, double Limit, double SeatAngle);

/// <summary>
/// Reads the robot section into computing form. Each concern is its own function, so that a finding declares only the fields
/// that could move it: the geometry for all, rods for clearance, ball joints for swing, drive steps for resolution.
/// <para>
/// Nominal geometry, base frame, azimuth φ, r = (cos φ, sin φ, 0) outward, t = (−sin φ, cos φ, 0), z up:
/// carriage joint at geometric coordinate 0, or shoulder: <c>BaseRadius·r + BaseSideOffset·t + BaseHeight·z</c>; platform joint from
/// the platform reference point: <c>PlatformRadius·r + PlatformSideOffset·t + PlatformHeight·z</c>. Rail, inclination β, side lean λ:
/// <c>E = cos λ·(−cos β·z − sin β·r) + sin λ·t</c>. Crank: <c>E = cos λ·r + sin λ·t</c>, <c>F = −z</c>.
/// </para>
/// <para>
/// Defaults, each the nominal machine: side offsets, inclination, side lean, home offset and platform height are zero. (The
/// platform reference point is then at the centre of the platform joints.) Nothing else is assumed.
/// </para>
/// </summary>
public static class RobotInputs
{
    /// <summary>Two azimuths closer than this are the same direction; a chain of a planar robot may be this far off its plane. Radians.</summary>
    private const double SameDirection = 1e-6;

    /// <summary>Joints, rods and travel: all that positions need.</summary>
    public static RobotRead Geometry(Robot robot, Reading reading)
    {
        var family = reading.Need(robot.Family, "/robot/family", RobotFamily.RailDelta);
        var chains = Chains(robot, reading);
        if (chains.Length == 0)
        {
            reading.Missing(ChainReading.ChainsPointer);
            return new(null, []);
        }

        var problems = ImmutableArray.CreateBuilder<Contradiction>();
        if (chains.Length is not (2 or 3))
            problems.Add(new(ChainReading.ChainsPointer, RobotReasons.NumberOfChains));

        var nominal = ImmutableArray.CreateRange(chains, c => Nominal.Read(family, c.Fields, c.Own));
        var senseStated = reading.Or(robot.NumberedCounterClockwise, "/robot/numberedCounterClockwise", true);
        if (!reading.Complete) return new(null, problems.ToImmutable());

        for (int i = 0; i < chains.Length; i++) nominal[i].Check(chains[i].Fields, problems);
        CheckTogether(chains, nominal, robot.NumberedCounterClockwise is null ? null : senseStated, problems);
        return problems.Count > 0
            ? new(null, problems.ToImmutable())
            : new(new(family, ImmutableArray.CreateRange(nominal, n => n.ToChain()), ImmutableArray.CreateRange(chains, c => c.Id)), []);
    }

    /// <summary>The rods' thickness and spacing, in the order of the chains. Not a number where not stated.</summary>
    public static ImmutableArray<RodPair> Rods(Robot robot, Reading reading) =>
        ImmutableArray.CreateRange(Chains(robot, reading), c => new RodPair(
            c.Fields.Need("rodSpacing", d => d.RodSpacing), c.Fields.Need("rodDiameter", d => d.RodDiameter)));

    /// <summary>The ball joints, in the order of the chains. A seat needs its angle; a cross bar has none.</summary>
    public static ImmutableArray<BallJoint> Joints(Robot robot, Reading reading) =>
        ImmutableArray.CreateRange(Chains(robot, reading), c =>
        {
            var kind = c.Fields.Need("joint", d => d.Joint, JointKind.CrossBar);
            double limit = c.Fields.Need("swingLimit", d => d.SwingLimit);
            return new BallJoint(kind, limit, kind == JointKind.Seat ? c.Fields.Need("seatAngle", d => d.SeatAngle) : 0);
        });

    /// <summary>Movement of each drive coordinate per step of its drive, metres or radians, in the order of the chains.</summary>
    public static ImmutableArray<double> DriveSteps(Robot robot, Reading reading) =>
        ImmutableArray.CreateRange(Chains(robot, reading), c => c.Fields.Need("driveStep", d => d.DriveStep));

    /// <summary>The chains in their stated order, each with its way of reading fields.</summary>
    internal static ImmutableArray<(string Id, ChainDescription Own, ChainReading Fields)> Chains(Robot robot, Reading reading)
    {
        reading.Used(ChainReading.ChainsPointer, string.Join('\n', robot.Chains.Keys));
        return [.. robot.Chains.InOrder().Select(e =>
        {
            var fields = new ChainReading(robot, e.Key, e.Value, reading);
            reading.Used(fields.Pointer + "/order", e.Value.Order);
            return (e.Key, e.Value, fields);
        })];
    }

    private static void CheckTogether(
        ImmutableArray<(string Id, ChainDescription Own, ChainReading Fields)> chains, ImmutableArray<Nominal> nominal,
        bool? counterClockwise, ImmutableArray<Contradiction>.Builder problems)
    {
        for (int i = 1; i < chains.Length; i++)
            for (int j = 0; j < i; j++)
                if (Math.Abs(Math.IEEERemainder(nominal[i].Azimuth - nominal[j].Azimuth, Math.Tau)) < SameDirection)
                    problems.Add(new($"{chains[i].Fields.Pointer}/azimuth", RobotReasons.SameAzimuth.Naming(chains[j].Fields.Pointer, chains[i].Fields.Pointer)));

        if (chains.Length == 2)
            for (int i = 0; i < 2; i++)
                if (!nominal[i].LiesInPlane(SameDirection))
                    problems.Add(new($"{chains[i].Fields.Pointer}/azimuth", RobotReasons.OffPlane));

        if (chains.Length == 3 && counterClockwise is { } sense
            && (Turn(nominal[0], nominal[1]) + Turn(nominal[1], nominal[2]) + Turn(nominal[2], nominal[0]) < 1.5 * Math.Tau) != sense)
            problems.Add(new("/robot/numberedCounterClockwise", sense ? RobotReasons.NumberedClockwise : RobotReasons.NumberedCounterClockwise));
    }

    /// <summary>Counter-clockwise turn from one chain to the next, 0 to 2π: three of them add up to one turn or to two.</summary>
    private static double Turn(Nominal from, Nominal to)
    {
        double turn = Math.IEEERemainder(to.Azimuth - from.Azimuth, Math.Tau);
        return turn < 0 ? turn + Math.Tau : turn;
    }

    /// <summary>One chain's stated numbers with the defaults filled in.</summary>
    private readonly record struct Nominal(
        RobotFamily Family, double Azimuth, double BaseRadius, double BaseHeight, double BaseSideOffset, double Inclination, double SideLean,
        double UpperArm, double Rod, double PlatformRadius, double PlatformHeight, double PlatformSideOffset,
        double HomeOffset, double TravelFrom, double TravelTo)
    {
        public static Nominal Read(RobotFamily family, ChainReading f, ChainDescription own) => new(
            family,
            f.NeedOwn("azimuth", own.Azimuth),
            f.Need("baseRadius", d => d.BaseRadius),
            f.Need("baseHeight", d => d.BaseHeight),
            f.Or("baseSideOffset", d => d.BaseSideOffset, 0),
            family == RobotFamily.RailDelta ? f.Or("inclination", d => d.Inclination, 0) : 0,
            f.Or("sideLean", d => d.SideLean, 0),
            family == RobotFamily.CrankDelta ? f.Need("upperArm", d => d.UpperArm) : 1,
            f.Need("rod", d => d.Rod),
            f.Need("platformRadius", d => d.PlatformRadius),
            f.Or("platformHeight", d => d.PlatformHeight, 0),
            f.Or("platformSideOffset", d => d.PlatformSideOffset, 0),
            f.Or("homeOffset", d => d.HomeOffset, 0),
            f.Need("travelFrom", d => d.TravelFrom),
            f.Need("travelTo", d => d.TravelTo));

        public Chain ToChain()
        {
            var (s, c) = Math.SinCos(Azimuth);
            Vec3 r = new(c, s, 0), t = new(-s, c, 0), z = Vec3.UnitZ;
            var foot = BaseRadius * r + BaseSideOffset * t + BaseHeight * z;
            var joint = PlatformRadius * r + PlatformSideOffset * t + PlatformHeight * z;
            var (sinLean, cosLean) = Math.SinCos(SideLean);
            if (Family == RobotFamily.CrankDelta)
                return new(Family, foot, cosLean * r + sinLean * t, -z, UpperArm, joint, Rod, HomeOffset, TravelFrom, TravelTo, cosLean * t - sinLean * r);
            var (sinIncline, cosIncline) = Math.SinCos(Inclination);
            var rail = cosLean * (-cosIncline * z - sinIncline * r) + sinLean * t;
            return new(Family, foot, rail, Vec3.Zero, UpperArm, joint, Rod, HomeOffset, TravelFrom, TravelTo, t);
        }

        public bool LiesInPlane(double tolerance) =>
            Math.Abs(Math.Sin(Azimuth)) < tolerance && Math.Abs(SideLean) < tolerance && BaseSideOffset == 0 && PlatformSideOffset == 0;

        public void Check(ChainReading f, ImmutableArray<Contradiction>.Builder problems)
        {
            Positive("rod", Rod, d => d.Rod, RobotReasons.RodPositive);
            Positive("baseRadius", BaseRadius, d => d.BaseRadius, RobotReasons.BaseRadiusPositive);
            Positive("upperArm", UpperArm, d => d.UpperArm, RobotReasons.UpperArmPositive);
            if (!(PlatformRadius >= 0))
                Add("platformRadius", d => d.PlatformRadius, RobotReasons.PlatformRadiusNegative);
            if (!(TravelFrom < TravelTo))
                Add("travelTo", d => d.TravelTo, RobotReasons.TravelEndsBeforeItBegins);
            if (Math.Abs(Inclination) >= Math.PI / 2)
                Add("inclination", d => d.Inclination, RobotReasons.InclinationTooLarge);
            if (Math.Abs(SideLean) >= Math.PI / 2)
                Add("sideLean", d => d.SideLean, RobotReasons.SideLeanTooLarge);
            if (Rod > 0 && Rod <= ShortestRod())
                Add("rod", d => d.Rod, RobotReasons.RodTooShort);

            void Positive(string name, double value, Func<ChainDescription, double?> field, Reason reason)
            {
                if (!(value > 0)) Add(name, field, reason);
            }

            void Add(string name, Func<ChainDescription, double?> field, Reason reason)
            {
                var problem = new Contradiction(f.PointerOf(name, field), reason);
                if (!problems.Contains(problem)) problems.Add(problem);
            }
        }

        /// <summary>
        /// Distance from the upright line on which the platform joint lies with the platform on the base's axis, to the rail (as an
        /// endless line) or to the circle of the elbow, seen from above: a rod no longer than that never closes the chain there.
        /// </summary>
        private double ShortestRod()
        {
            var chain = ToChain();
            var w = chain.Foot - chain.B;
            double across = Math.Sqrt(w.X * w.X + w.Y * w.Y);
            if (Family == RobotFamily.CrankDelta) return across - UpperArm;
            var normal = chain.E.Cross(Vec3.UnitZ);
            return normal.Norm < SameDirection ? across : Math.Abs(w.Dot(normal.Unit()));
        }
    }
}
