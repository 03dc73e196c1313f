using Trivet.Numerics;

namespace Trivet.Kinematics;

/// <summary>Whether given drive readings can be joined by the rods at all.</summary>
public enum Closure
{
    Closes,
    /// <summary>The carriages or elbows stand where no platform position keeps every rod's length: the robot can't be assembled so.</summary>
    Apart,
    /// <summary>The spheres' centres lie in one line (three chains) or on each other: the position is not determined.</summary>
    InLine,
    /// <summary>A drive reading is not a number.</summary>
    Unknown,
}

/// <summary>
/// Where the platform is for given drive readings: both ways to assemble the robot.
/// <para>
/// The rod of chain i keeps the platform reference point on a sphere about c_i = C_i(q_i) − B_i with radius L_i. Three spheres: with
/// d₂ = c₂ − c₁, d₃ = c₃ − c₁, n = d₂ × d₃ and b_k = (L₁² − L_k² + |d_k|²)/2, the foot of p in the plane of the centres is
/// c₁ + (b₂·d₃ × n + b₃·n × d₂)/|n|², and p lies above or below it by h, h² = L₁² − |foot − c₁|² (trilateration, elementary; checked
/// against [Williams2016] and a physics engine in the tests). Two circles in y = 0 likewise.
/// </para>
/// <para>
/// The working root is the one below the plane of the centres, where "above" is the side that faces up when every joint stands at
/// geometric coordinate zero. So the root never jumps while the drives move, unless the robot passes the pose where both meet.
/// </para>
/// </summary>
/// <param name="Working">Platform below, base frame, metres; not a number unless it closes.</param>
/// <param name="Mirror">The other root: the platform turned through the carriages' plane.</param>
/// <param name="HeightSquared">h², square metres: below zero the rods do not meet; zero where both roots meet (a parallel singularity).</param>
public readonly record struct ForwardPose(Closure Closure, Vec3 Working, Vec3 Mirror, double HeightSquared)
{
    /// <summary>A triangle of centres flatter than this (height over longest side) determines nothing.</summary>
    private const double FlatTriangle = 1e-9;

    public static ForwardPose Of(DeltaRobot robot, Vec3 q)
    {
        var chains = robot.Chains;
        Chain one = chains[0], two = chains[1];
        Vec3 c1 = Centre(one, q.X), c2 = Centre(two, q.Y);
        if (robot.Planar) return TwoCircles(c1, one.Rod, c2, two.Rod, upFor: LevelCentre(two) - LevelCentre(one));

        var three = chains[2];
        var c3 = Centre(three, q.Z);
        var level1 = LevelCentre(one);
        return ThreeSpheres(c1, one.Rod, c2, two.Rod, c3, three.Rod, (LevelCentre(two) - level1).Cross(LevelCentre(three) - level1).Z);
    }

    private static Vec3 Centre(in Chain chain, double q) => chain.Joint(q) - chain.B;

    private static Vec3 LevelCentre(in Chain chain) => Centre(chain, -chain.HomeOffset);

    private static ForwardPose ThreeSpheres(Vec3 c1, double l1, Vec3 c2, double l2, Vec3 c3, double l3, double levelNormalZ)
    {
        Vec3 d2 = c2 - c1, d3 = c3 - c1;
        var n = d2.Cross(d3);
        double n2 = n.NormSquared;
        if (!n.IsFinite) return Failed(Closure.Unknown);
        double longest2 = Math.Max(Math.Max(d2.NormSquared, d3.NormSquared), (c3 - c2).NormSquared);
        if (n2 <= FlatTriangle * FlatTriangle * longest2 * longest2) return Failed(Closure.InLine);

        double b2 = (l1 * l1 - l2 * l2 + d2.NormSquared) / 2, b3 = (l1 * l1 - l3 * l3 + d3.NormSquared) / 2;
        var foot = (b2 * d3.Cross(n) + b3 * n.Cross(d2)) / n2;
        return Split(c1 + foot, l1 * l1 - foot.NormSquared, (levelNormalZ < 0 ? -1 : 1) * n.Unit());
    }

    private static ForwardPose TwoCircles(Vec3 c1, double l1, Vec3 c2, double l2, Vec3 upFor)
    {
        var d = c2 - c1;
        double d2 = d.NormSquared;
        if (!d.IsFinite) return Failed(Closure.Unknown);
        if (d2 <= FlatTriangle * FlatTriangle * l1 * l1) return Failed(Closure.InLine);

        var foot = (l1 * l1 - l2 * l2 + d2) / (2 * d2) * d;
        // −y × d faces up when d points along x.
        var up = new Vec3(-d.Z, 0, d.X).Unit();
        return Split(c1 + foot, l1 * l1 - foot.NormSquared, upFor.X < 0 ? -up : up);
    }

    private static ForwardPose Split(Vec3 foot, double height2, Vec3 up)
    {
        if (height2 < 0) return new(Closure.Apart, Vec3.NaN, Vec3.NaN, height2);
        var h = Math.Sqrt(height2) * up;
        return new(Closure.Closes, foot - h, foot + h, height2);
    }

    private static ForwardPose Failed(Closure closure) => new(closure, Vec3.NaN, Vec3.NaN, double.NaN);
}
