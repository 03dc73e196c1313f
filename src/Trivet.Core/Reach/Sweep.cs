using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using Trivet.Numerics;

namespace Trivet.Reach;

[InlineArray(20)]
internal struct AnchorRates
{
    private IntervalVec3 _first;
}

[InlineArray(5)]
internal struct AnchorNumbers
{
    private double _first;
}

/// <summary>
/// Where the anchors of moving bodies are at the middle of a part of a motion's range, how they follow each variable, and how far
/// they get at most.
/// </summary>
internal ref struct Sweep
{
    /// <summary>Rounding of positions that are formed from the anchors, metres.</summary>
    private const double Rounding = 1e-12;

    private readonly MotionBox _box;
    private AnchorRates _rates;
    private AnchorNumbers _travel, _error;

    /// <summary>Anchor positions at the middle, base frame; exact to within the error kept beside them.</summary>
    public AnchorPoints Middle;

    public Sweep(in MotionBox box)
    {
        _box = box;
        var platform = box.PlatformMid.Mid;
        Middle[(int)Anchor.Platform] = platform;
        Middle[(int)Anchor.Tcp] = platform + box.ToolMid.Mid;
        for (int k = 0; k < box.Variables; k++)
        {
            Rate(Anchor.Platform, k) = box.Rate[k];
            Rate(Anchor.Tcp, k) = box.TcpRate[k];
        }
        Settle(Anchor.Platform, box.PlatformMid.RadiusAbout(platform));
        Settle(Anchor.Tcp, box.PlatformMid.RadiusAbout(platform) + box.ToolMid.RadiusAbout(box.ToolMid.Mid));
    }

    /// <summary>Adds the carriage joints or elbows. False where a chain is not known to close.</summary>
    public bool Join(ImmutableArray<BoundedChain> chains)
    {
        for (int i = 0; i < chains.Length; i++)
        {
            var anchor = Anchor.Joint0 + i;
            var whole = ChainEnclosure.Over(chains[i], _box, out var slopes);
            var reading = chains[i].Over(_box.PlatformMid).Reading;
            if (!whole.Rate.IsBounded || !reading.IsBounded) return false;
            double q = reading.Mid;
            Middle[(int)anchor] = chains[i].Chain.Joint(q);
            for (int k = 0; k < _box.Variables; k++) Rate(anchor, k) = slopes[k] * whole.JointRate;
            Settle(anchor, chains[i].Chain.JointRate(q).Norm * reading.Width);
        }
        return true;
    }

    /// <summary>No point of the body gets farther than this from where it is at the middle, metres.</summary>
    public readonly double Travel(in MovingBody body) => Math.Max(_travel[(int)body.From], _travel[(int)body.To]);

    /// <summary>Lower bound of n·(b − a) over the box, for two points that hang on anchors.</summary>
    public readonly double Apart(Vec3 n, Anchor a, Vec3 aMiddle, Anchor b, Vec3 bMiddle)
    {
        double change = 0;
        for (int k = 0; k < _box.Variables; k++)
            if (_box.Half[k] > 0 && a != b) change += (RateOf(b, k) - RateOf(a, k)).Dot(n).Magnitude * _box.Half[k];
        return n.Dot(bMiddle - aMiddle) - change * (1 + 1e-14) - _error[(int)a] - _error[(int)b];
    }

    /// <summary>Upper bound of n·a over the box.</summary>
    public readonly double Along(Vec3 n, Anchor a, Vec3 aMiddle)
    {
        double change = 0;
        for (int k = 0; k < _box.Variables; k++)
            if (_box.Half[k] > 0) change += RateOf(a, k).Dot(n).Magnitude * _box.Half[k];
        return n.Dot(aMiddle) + change * (1 + 1e-14) + _error[(int)a];
    }

    /// <summary>
    /// Approach grows as the closest point of the first body, less that of the second, moves along n. What moves it across n, or
    /// turns a body, bends the distance, and that is what the bound loses.
    /// </summary>
    public readonly void Steer(Vec3 n, in MovingBody a, in MovingBody b, in Closest closest, Span<double> rise, Span<double> spread)
    {
        for (int k = 0; k < _box.Variables; k++)
            Steer(n, RateAt(a, closest.OnFirst, k) - RateAt(b, closest.OnSecond, k), TurnOf(a, k) + TurnOf(b, k), k, rise, spread);
    }

    /// <summary>The same against a body that stands still.</summary>
    public readonly void Steer(Vec3 n, in MovingBody a, in Closest closest, Span<double> rise, Span<double> spread)
    {
        for (int k = 0; k < _box.Variables; k++) Steer(n, RateAt(a, closest.OnFirst, k), TurnOf(a, k), k, rise, spread);
    }

    private readonly void Steer(Vec3 n, Vec3 rate, double turn, int k, Span<double> rise, Span<double> spread)
    {
        // Bodies that meet have no line of closest approach: then the size of the movement is all there is.
        double along = n.IsFinite ? n.Dot(rate) : 0;
        rise[k] = along;
        spread[k] = ((n.IsFinite ? (rate - along * n).Norm : rate.Norm) + turn) * _box.Half[k];
    }

    /// <summary>How fast the ends of a body move against each other.</summary>
    private readonly double TurnOf(in MovingBody body, int k) => (RateOf(body.To, k).Mid - RateOf(body.From, k).Mid).Norm;

    /// <summary>Rate of a point between the two ends of a body, middle values.</summary>
    private readonly Vec3 RateAt(in MovingBody body, Vec3 point, int k)
    {
        Vec3 from = Middle[(int)body.From] + body.FromOffset, along = Middle[(int)body.To] + body.ToOffset - from;
        double length2 = along.NormSquared, s = length2 > 0 ? Math.Clamp((point - from).Dot(along) / length2, 0, 1) : 0;
        return (1 - s) * RateOf(body.From, k).Mid + s * RateOf(body.To, k).Mid;
    }

    private void Settle(Anchor anchor, double error)
    {
        double travel = 0;
        for (int k = 0; k < _box.Variables; k++) travel += RateOf(anchor, k).RadiusAbout(Vec3.Zero) * _box.Half[k];
        _error[(int)anchor] = error + Rounding;
        _travel[(int)anchor] = travel * (1 + 1e-14) + error + Rounding;
    }

    [UnscopedRef]
    private ref IntervalVec3 Rate(Anchor anchor, int k) => ref _rates[(int)anchor * 4 + k];

    private readonly IntervalVec3 RateOf(Anchor anchor, int k) => _rates[(int)anchor * 4 + k];
}
