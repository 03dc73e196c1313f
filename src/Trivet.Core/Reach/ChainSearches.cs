using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>Square of a chain's use of reach over a station's box.</summary>
internal sealed class ClosureSearch(IPlatformMotion motion, BoundedChain chain) : IBoundable
{
    public double At(ReadOnlySpan<double> x) => chain.UseSquared(motion.PlatformAt(x));

    public double UpperBound(ReadOnlySpan<double> low, ReadOnlySpan<double> high, Span<double> rise, Span<double> spread, out int monotone)
    {
        var box = motion.Over(low, high);
        var (natural, gradient) = chain.UseSquared(box.Platform);
        var slopes = box.SlopesOf(gradient);
        monotone = box.Steer(slopes, rise, spread);
        return natural.And(box.MeanValue(chain.UseSquared(box.PlatformMid).Value, slopes)).Upper;
    }
}

/// <summary>Distance of a chain's reading from the middle of its travel over a station's box: largest at either end.</summary>
internal sealed class TravelSearch(IPlatformMotion motion, BoundedChain chain, double middle) : IBoundable
{
    public double Reading(ReadOnlySpan<double> x) => chain.Chain.Inverse(motion.PlatformAt(x));

    public double At(ReadOnlySpan<double> x) => Math.Abs(Reading(x) - middle);

    public double UpperBound(ReadOnlySpan<double> low, ReadOnlySpan<double> high, Span<double> rise, Span<double> spread, out int monotone)
    {
        var box = motion.Over(low, high);
        var q = ChainEnclosure.Over(chain, box, out var slopes).Reading - middle;
        monotone = box.Steer(slopes, rise, spread);
        // Beyond the middle the distance grows with the reading, before it the other way; across it in neither.
        if (q.Lower < 0 && q.Upper > 0) monotone = 0;
        if (q.Mid < 0)
            foreach (ref double r in rise) r = -r;
        return Interval.Abs(q).Upper;
    }
}
