using System.Runtime.CompilerServices;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>
/// Where the platform is as a function of one to four variables: all places of a station's volume, or one path through the cell.
/// Searches bound what they look for over parts of it.
/// </summary>
internal interface IPlatformMotion
{
    int Variables { get; }
    ReadOnlySpan<double> Low { get; }
    ReadOnlySpan<double> High { get; }

    /// <summary>Position of the axis that carries the robot, metres; zero where there is none.</summary>
    double LinearAxisAt { get; }

    /// <summary>Platform reference point, base frame.</summary>
    Vec3 PlatformAt(ReadOnlySpan<double> x);

    /// <summary>Tool centre point from the platform reference point, base frame.</summary>
    Vec3 ToolAt(ReadOnlySpan<double> x);

    Place PlaceAt(ReadOnlySpan<double> x);

    /// <summary>All platform positions, base frame, of a part of the variables' range.</summary>
    MotionBox Over(ReadOnlySpan<double> low, ReadOnlySpan<double> high);
}

[InlineArray(4)]
internal struct Halves
{
    private double _first;
}

[InlineArray(4)]
internal struct Rates
{
    private IntervalVec3 _first;
}

[InlineArray(4)]
internal struct Slopes
{
    private Interval _first;
}

/// <summary>Platform positions over a part of a motion's range, with their middle and how they follow each variable.</summary>
internal struct MotionBox
{
    public int Variables;
    /// <summary>Platform reference point, base frame, over the box and at its middle.</summary>
    public IntervalVec3 Platform, PlatformMid;
    /// <summary>Tool centre point from the platform, base frame.</summary>
    public IntervalVec3 Tool, ToolMid;
    /// <summary>∂p/∂x_k of the platform and of the tool centre point, base frame.</summary>
    public Rates Rate, TcpRate;
    /// <summary>Half the width of each variable.</summary>
    public Halves Half;

    /// <summary>
    /// The same with the platform taken to the plane y = 0, and the tool centre point with it: that one then moves across the plane only as
    /// the tool turns.
    /// </summary>
    /// <param name="turn">Change of the rotary angle with the last variable.</param>
    public readonly MotionBox Flattened(Interval turn)
    {
        var flat = this with { Platform = Platform with { Y = 0 }, PlatformMid = PlatformMid with { Y = 0 } };
        bool turns = Variables is 1 or 4;
        for (int k = 0; k < Variables; k++)
        {
            flat.Rate[k] = Rate[k] with { Y = 0 };
            flat.TcpRate[k] = TcpRate[k] with { Y = turns && k == Variables - 1 ? turn * Tool.X : 0 };
        }
        return flat;
    }

    /// <summary>Partial derivatives of a function whose gradient with respect to the platform position is enclosed.</summary>
    public readonly Slopes SlopesOf(IntervalVec3 gradient)
    {
        var slopes = new Slopes();
        for (int k = 0; k < Variables; k++) slopes[k] = gradient.Dot(Rate[k]);
        return slopes;
    }

    /// <summary>f(x) lies in f(middle) + Σ f_k·(x_k − middle_k), with f_k any partial derivative that occurs in the box (mean value theorem).</summary>
    public readonly Interval MeanValue(Interval atMid, in Slopes slopes)
    {
        var sum = atMid;
        for (int k = 0; k < Variables; k++)
            if (Half[k] > 0) sum += slopes[k] * new Interval(-Half[k], Half[k]);
        return sum;
    }

    /// <summary>
    /// What a search wants to know of the slopes: the direction of growth, where it is certain, and how far the function may bend
    /// away from a plane over half the width.
    /// </summary>
    public readonly int Steer(in Slopes slopes, Span<double> rise, Span<double> spread)
    {
        int monotone = 0;
        for (int k = 0; k < Variables; k++)
        {
            var slope = slopes[k];
            rise[k] = slope.Mid;
            spread[k] = slope.Width * Half[k];
            if (slope.Lower >= 0 || slope.Upper <= 0) monotone |= 1 << k;
        }
        return monotone;
    }
}
