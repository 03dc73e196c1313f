using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Motion;

/// <summary>
/// A chain's reading along a path of the platform, with three derivatives. With u = p + B − C(q), loop closure u·u = L² differentiated:
/// <c>u·u′ = 0</c>, <c>u·u″ + u′·u′ = 0</c>, <c>u·u‴ + 3·u′·u″ = 0</c>, where <c>u′ = p′ − C′q′</c>, <c>u″ = p″ − C′q″ − C″q′²</c> and
/// <c>u‴ = p‴ − C′q‴ − 3·C″q′q″ − C‴q′³</c>. Each is solved for the newest derivative of q, which only u·C′ multiplies.
/// </summary>
internal static class ChainAlong
{
    public static AxisPoint Of(in Chain chain, in PathPoint p)
    {
        double q = chain.Inverse(p.P);
        Vec3 rod = chain.RodVector(p.P, q), c1 = chain.JointRate(q);
        // A crank's joint runs on a circle: its second derivative points inward along the arm, its third against the first.
        bool turns = chain.Family == RobotFamily.CrankDelta;
        Vec3 c2 = turns ? chain.Foot - chain.Joint(q) : Vec3.Zero, c3 = turns ? -c1 : Vec3.Zero;
        double along = rod.Dot(c1);
        double q1 = rod.Dot(p.D1) / along;
        var u1 = p.D1 - q1 * c1;
        double q2 = (rod.Dot(p.D2 - q1 * q1 * c2) + u1.NormSquared) / along;
        var u2 = p.D2 - q2 * c1 - q1 * q1 * c2;
        double q3 = (rod.Dot(p.D3 - 3 * q1 * q2 * c2 - q1 * q1 * q1 * c3) + 3 * u1.Dot(u2)) / along;
        return new(q, q1, q2, q3);
    }
}
