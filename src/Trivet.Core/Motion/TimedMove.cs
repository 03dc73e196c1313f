using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Motion;

/// <summary>A move timed by one law.</summary>
/// <param name="Trace">Null where the law has no motion for it.</param>
/// <param name="Leaves">Largest distance of the tool centre point from the planned path, metres; zero for laws that follow it.</param>
public sealed record TimedMove(MoveTrace? Trace, double Leaves = 0)
{
    public double Duration => Trace?.Duration ?? double.NaN;

    /// <summary>A move that need not follow its path, with how far it strays.</summary>
    internal static TimedMove Of(PlatformPath path, ImmutableArray<Instant> instants)
    {
        const int Places = 300, Window = 40;
        var planned = new Vec3[Places + 1];
        for (int i = 0; i <= Places; i++) planned[i] = path.Path.At(path.Length * i / Places).P;
        double strays = 0;
        int last = 0;
        foreach (var instant in instants)
        {
            var tool = path.ToolOf(instant.State.P, instant.State.Turn.Angle);
            double nearest = double.PositiveInfinity;
            int at = last;
            // The tool goes along: the nearest stretch is where it last was or a little further on.
            for (int i = Math.Max(0, last - Window / 4); i < Math.Min(Places, last + Window); i++)
            {
                Vec3 along = planned[i + 1] - planned[i], from = tool - planned[i];
                double length2 = along.NormSquared, share = length2 > 0 ? Math.Clamp(from.Dot(along) / length2, 0, 1) : 0;
                double distance2 = (from - share * along).NormSquared;
                if (distance2 < nearest) (nearest, at) = (distance2, i);
            }
            last = at;
            strays = Math.Max(strays, nearest);
        }
        return new(new MoveTrace(instants), Math.Sqrt(strays));
    }
}
