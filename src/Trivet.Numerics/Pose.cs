namespace Trivet.Numerics;

/// <summary>
/// A rigid placement <c>X_AB</c> of frame B in frame A: rotation <c>R_AB</c> and the position <c>p_AB</c> of B's origin, in
/// metres, expressed in A. <c>p_AQ = X_AB * p_BQ</c>.
/// </summary>
public readonly record struct Pose(Mat3 R, Vec3 P)
{
    public static Pose Identity => new(Mat3.Identity, Vec3.Zero);

    public static Vec3 operator *(Pose x_AB, Vec3 p_BQ) => x_AB.R * p_BQ + x_AB.P;
    public static Pose operator *(Pose x_AB, Pose x_BC) => new(x_AB.R * x_BC.R, x_AB * x_BC.P);

    public Pose Inverse()
    {
        var r_BA = R.Transpose();
        return new(r_BA, -(r_BA * P));
    }
}
