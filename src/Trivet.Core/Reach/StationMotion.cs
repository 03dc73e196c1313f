using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>
/// The platform's place as a function of what a station leaves free: x = (s_x, s_y, s_z, φ), the tool centre point in the station's
/// frame and, where the tool centre point is off the rotary axis, the rotary angle:
/// <c>p(x) = R_BC·(X_CS·s − p_CB − a·d_C) − Rz(φ)·t</c>, with a the position of the linear axis and t the tool centre point from the platform.
/// </summary>
internal sealed class StationMotion : IPlatformMotion
{
    /// <summary>Rounding of the placing matrices, metres: added to every platform position that a bound starts from.</summary>
    private const double PlacingError = 1e-12;

    private readonly bool _planar;
    private readonly double[] _low, _high;
    private readonly Mat3 _r_BS;
    private readonly Vec3 _origin_B;

    /// <param name="planar">A two-chain robot: the platform is taken to its plane y = 0. How far off it the station asks for it to be,
    /// <see cref="LargestOffPlane"/> tells.</param>
    public StationMotion(CellGeometry geometry, StationBox box, bool rotaryFitted, bool planar)
    {
        (Box, RotaryFitted, _planar) = (box, rotaryFitted, planar);
        var r_BC = geometry.X_CB.R.Transpose();
        _r_BS = r_BC * box.X_CS.R;
        _origin_B = r_BC * (box.X_CS.P - geometry.X_CB.P - box.LinearAxisAt * geometry.LinearDirection_C);
        Tcp = geometry.Tcp_P;

        bool turns = box.RotaryTo > box.RotaryFrom && (Tcp.X != 0 || Tcp.Y != 0);
        _low = turns ? [box.Low.X, box.Low.Y, box.Low.Z, box.RotaryFrom] : [box.Low.X, box.Low.Y, box.Low.Z];
        _high = turns ? [box.High.X, box.High.Y, box.High.Z, box.RotaryTo] : [box.High.X, box.High.Y, box.High.Z];
    }

    public StationBox Box { get; }
    public bool RotaryFitted { get; }
    public double LinearAxisAt => Box.LinearAxisAt;
    public Vec3 Tcp { get; }
    public ReadOnlySpan<double> Low => _low;
    public ReadOnlySpan<double> High => _high;
    public int Variables => _low.Length;

    public double Angle(ReadOnlySpan<double> x) => x.Length > 3 ? x[3] : Box.RotaryFrom;

    /// <summary>Platform reference point, base frame.</summary>
    public Vec3 PlatformAt(ReadOnlySpan<double> x) => Unprojected(x) is var p && _planar ? p with { Y = 0 } : p;

    /// <summary>Largest distance of the platform from the plane y = 0 over the whole box, and where: linear in s, a sine in φ.</summary>
    public (double Distance, Place At) LargestOffPlane()
    {
        double worst = -1;
        Span<double> x = stackalloc double[Variables], at = stackalloc double[Variables];
        Span<double> angles = stackalloc double[4];
        int turns = AnglesToTry(angles);
        for (int corner = 0; corner < 8; corner++)
        {
            for (int k = 0; k < 3; k++) x[k] = (corner >> k & 1) == 0 ? _low[k] : _high[k];
            for (int i = 0; i < turns; i++)
            {
                if (Variables > 3) x[3] = angles[i];
                double distance = Math.Abs(Unprojected(x).Y);
                if (distance <= worst) continue;
                worst = distance;
                x.CopyTo(at);
            }
        }
        return (worst, PlaceAt(at));
    }

    /// <summary>Both ends of the rotary range, and the angles within it at which the tool stands farthest to either side.</summary>
    private int AnglesToTry(Span<double> angles)
    {
        if (Variables == 3) return 1;
        (angles[0], angles[1]) = (_low[3], _high[3]);
        int count = 2;
        double aside = Math.PI / 2 - Math.Atan2(Tcp.Y, Tcp.X);
        double first = aside + Math.Ceiling((_low[3] - aside) / Math.PI) * Math.PI;
        for (double angle = first; angle <= _high[3] && count < 4; angle += Math.PI) angles[count++] = angle;
        return count;
    }

    private Vec3 Unprojected(ReadOnlySpan<double> x) => _origin_B + _r_BS * new Vec3(x[0], x[1], x[2]) - Mat3.RotationZ(Angle(x)) * Tcp;

    /// <summary>Tool centre point from the platform reference point, base frame.</summary>
    public Vec3 ToolAt(ReadOnlySpan<double> x) => Mat3.RotationZ(Angle(x)) * Tcp;

    public Place PlaceAt(ReadOnlySpan<double> x) => new(
        Box.X_CS * new Vec3(x[0], x[1], x[2]), RotaryFitted ? Angle(x) : double.NaN, PlatformAt(x), Box.LinearAxisAt);

    /// <summary>All platform positions, base frame, of a part of the box.</summary>
    public MotionBox Over(ReadOnlySpan<double> low, ReadOnlySpan<double> high)
    {
        var box = new MotionBox { Variables = Variables };
        var s = new IntervalVec3(new(low[0], high[0]), new(low[1], high[1]), new(low[2], high[2]));
        var sMid = new Vec3(s.X.Mid, s.Y.Mid, s.Z.Mid);
        for (int k = 0; k < 3; k++) box.Rate[k] = box.TcpRate[k] = _r_BS.Column(k);
        box.Half[0] = s.X.RadiusAbout(sMid.X);
        box.Half[1] = s.Y.RadiusAbout(sMid.Y);
        box.Half[2] = s.Z.RadiusAbout(sMid.Z);

        var origin = IntervalVec3.Around(_origin_B, PlacingError);
        Interval angle = Variables > 3 ? new Interval(low[3], high[3]) : Box.RotaryFrom;
        double angleMid = angle.Mid;
        box.Tool = Turned(angle);
        box.ToolMid = Turned(angleMid);
        if (Variables > 3)
        {
            box.Rate[3] = new IntervalVec3(box.Tool.Y, -box.Tool.X, 0);
            box.Half[3] = angle.RadiusAbout(angleMid);
        }
        box.Platform = origin + _r_BS * s - box.Tool;
        box.PlatformMid = origin + _r_BS * (IntervalVec3)sMid - box.ToolMid;
        return _planar ? box.Flattened(1) : box;
    }

    /// <summary>Rz(φ)·t.</summary>
    private IntervalVec3 Turned(Interval angle)
    {
        if (Tcp.X == 0 && Tcp.Y == 0) return Tcp;
        Interval s = Interval.Sin(angle), c = Interval.Cos(angle);
        return new(Tcp.X * c - Tcp.Y * s, Tcp.X * s + Tcp.Y * c, Tcp.Z);
    }
}
