using Trivet.Numerics;

namespace Trivet.Bolting;

/// <summary>Force of one screw at one instant, newtons: pull along it (positive opens the joint) and the shear that friction must carry.</summary>
public readonly record struct BoltForce(double Pull, double Shear);

/// <summary>
/// Shares force and moment out among the screws. The parts are taken as rigid against the screws: pulls run evenly over the joint, f = F/n + a·x + b·y about
/// the screws' middle, with a and b from the balance of both moments; shear is even, and for the moment about the axis it grows with the
/// distance from the middle. Levers between parts and edges are left out, so a thin flange needs a calculation of its own.
/// </summary>
public sealed class BoltForces
{
    private readonly Vec2[] _at;
    private readonly Vec2 _middle;
    private readonly double _xx, _yy, _xy, _polar;
    private readonly bool _hangs;

    public BoltForces(IReadOnlyList<Vec2> points, bool hangs)
    {
        _middle = 1.0 / points.Count * points.Aggregate(Vec2.Zero, (s, p) => s + p);
        _at = [.. points.Select(p => p - _middle)];
        _hangs = hangs;
        foreach (var p in _at)
        {
            _xx += p.X * p.X;
            _yy += p.Y * p.Y;
            _xy += p.X * p.Y;
        }
        _polar = _xx + _yy;
    }

    public int Count => _at.Length;

    /// <summary>Not a number where the screws can not carry the moment: one alone, or all in a row across it.</summary>
    public BoltForce At(int i, in JointForce load)
    {
        Vec3 f = load.Force, m = load.Moment - new Vec3(_middle.X, _middle.Y, 0).Cross(load.Force);
        int n = _at.Length;
        var p = _at[i];
        // Moment of forces f·z at x, y: (Σ f·y, −Σ f·x).
        double det = _xx * _yy - _xy * _xy, scale = _polar * _polar, a = 0, b = 0;
        if (det > 1e-9 * scale)
        {
            a = (-m.Y * _yy - m.X * _xy) / det;
            b = (m.X * _xx + m.Y * _xy) / det;
        }
        else if (m.X != 0 || m.Y != 0) a = b = double.NaN;
        double along = f.Z / n + a * p.X + b * p.Y;
        double twist = m.Z == 0 ? 0 : m.Z / _polar, x = f.X / n - twist * p.Y, y = f.Y / n + twist * p.X;
        return new(_hangs ? -along : along, Math.Sqrt(x * x + y * y));
    }
}
