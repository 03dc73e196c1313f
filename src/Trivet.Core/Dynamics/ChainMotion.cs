using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Dynamics;

/// <summary>
/// One chain while the platform moves, working mode. With rod = p + B − C(q) and loop closure |rod| = L differentiated twice:
/// <c>rod·(v − C′q̇) = 0</c> and <c>rod·(a − C′q̈ − C″q̇²) + |v − C′q̇|² = 0</c>. A crank's sine and cosine come without its angle, as
/// in the batch of poses. All of it is not a number where the rod does not reach.
/// </summary>
/// <param name="Joint">C: carriage joint or elbow, base frame, metres.</param>
/// <param name="Rod">From C to the platform joint, metres.</param>
/// <param name="Path">C′ = ∂C/∂q.</param>
/// <param name="Bend">C″ = ∂²C/∂q²; zero for a rail.</param>
/// <param name="Along">rod·C′, positive in the working mode, zero at the serial singularity.</param>
/// <param name="Speed">q̇, m/s or rad/s.</param>
/// <param name="Excess">The part of q̈ that does not come from the platform's acceleration: q̈ = rod·a/Along + Excess.</param>
internal readonly record struct ChainMotion(Vec3 Joint, Vec3 Rod, Vec3 Path, Vec3 Bend, double Along, double Speed, double Excess)
{
    public static ChainMotion Of(in Chain chain, Vec3 p, Vec3 v)
    {
        var w = p + chain.B - chain.Foot;
        if (chain.Family == RobotFamily.RailDelta)
        {
            double rail = w.Dot(chain.E);
            double along = Math.Sqrt(chain.Rod * chain.Rod - w.NormSquared + rail * rail);
            var joint = (rail - along) * chain.E;
            var rod = w - joint;
            double speed = rod.Dot(v) / along;
            return new(chain.Foot + joint, rod, chain.E, Vec3.Zero, along, speed, (v - speed * chain.E).NormSquared / along);
        }
        else
        {
            double e = w.Dot(chain.E), f = w.Dot(chain.F);
            double h2 = e * e + f * f, k = (w.NormSquared + chain.Arm * chain.Arm - chain.Rod * chain.Rod) / (2 * chain.Arm);
            double d = Math.Sqrt(h2 - k * k);
            double cos = (e * k + f * d) / h2, sin = (f * k - e * d) / h2;
            var arm = chain.Arm * (cos * chain.E + sin * chain.F);
            var path = chain.Arm * (cos * chain.F - sin * chain.E);
            var rod = w - arm;
            double along = chain.Arm * d, speed = rod.Dot(v) / along;
            return new(chain.Foot + arm, rod, path, -arm, along, speed,
                ((v - speed * path).NormSquared + speed * speed * rod.Dot(arm)) / along);
        }
    }

    /// <summary>q̈ for a platform acceleration, m/s² or rad/s².</summary>
    public double Acceleration(Vec3 a) => Rod.Dot(a) / Along + Excess;

    /// <summary>Acceleration of C, m/s².</summary>
    public Vec3 JointAcceleration(double acceleration) => acceleration * Path + Speed * Speed * Bend;
}
