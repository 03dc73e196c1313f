using System.Collections.Immutable;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>What is certain of all platform positions in a box at once: the interval twin of <see cref="ReachableSet"/>.</summary>
internal sealed class ReachEnclosure(ReachableSet set)
{
    private readonly ImmutableArray<BoundedChain> _chains = ImmutableArray.CreateRange(set.Robot.Chains, c => new BoundedChain(c));

    /// <summary>True only when every position of the box is in the set. False says nothing.</summary>
    public bool CertainlyInside(IntervalVec3 p)
    {
        Span<IntervalVec3> rods = stackalloc IntervalVec3[3];
        for (int i = 0; i < _chains.Length; i++)
        {
            var chain = _chains[i].Over(p);
            if (!chain.Reading.IsBounded) return false;
            // Mean value theorem: far narrower than the natural bounds once the box is small.
            IntervalVec3 middle = p.Mid;
            var reading = chain.Reading.And(_chains[i].Over(middle).Reading + chain.Rate.Dot(p - middle));
            if (!(reading.Lower >= _chains[i].Chain.TravelFrom && reading.Upper <= _chains[i].Chain.TravelTo)) return false;
            rods[i] = chain.Rod;
        }

        var sense = set.WorkingSign * (set.Robot.Planar ? Area(rods[0], rods[1]) : Volume(rods[0], rods[1], rods[2]));
        return sense.Lower > 0;
    }

    /// <summary>
    /// True when every position of a solid is in the set: its box is halved along its longest side until each part is certainly in the
    /// set or certainly apart from the solid. False when the effort allowed was not enough, or a part's middle is outside the set.
    /// </summary>
    /// <param name="apart">True only when a box has no point in common with the solid.</param>
    public bool Holds(Bounds box, Func<IntervalVec3, bool> apart, int mostBoxes, CancellationToken stop)
    {
        var open = new Stack<Bounds>();
        open.Push(box);
        for (int n = 0; open.Count > 0; n++)
        {
            if (n >= mostBoxes || stop.IsCancellationRequested) return false;
            var part = open.Pop();
            IntervalVec3 p = new(new(part.Low.X, part.High.X), new(part.Low.Y, part.High.Y), new(part.Low.Z, part.High.Z));
            if (apart(p) || CertainlyInside(p)) continue;
            if (!apart(p.Mid) && !set.Contains(p.Mid)) return false;
            Vec3 size = part.Size, middle = part.Centre;
            if (size.X >= size.Y && size.X >= size.Z)
            {
                open.Push(part with { High = part.High with { X = middle.X } });
                open.Push(part with { Low = part.Low with { X = middle.X } });
            }
            else if (size.Y >= size.Z)
            {
                open.Push(part with { High = part.High with { Y = middle.Y } });
                open.Push(part with { Low = part.Low with { Y = middle.Y } });
            }
            else
            {
                open.Push(part with { High = part.High with { Z = middle.Z } });
                open.Push(part with { Low = part.Low with { Z = middle.Z } });
            }
        }

        return true;
    }

    /// <summary>det[a b c].</summary>
    internal static Interval Volume(IntervalVec3 a, IntervalVec3 b, IntervalVec3 c) =>
        a.X * (b.Y * c.Z - b.Z * c.Y) + a.Y * (b.Z * c.X - b.X * c.Z) + a.Z * (b.X * c.Y - b.Y * c.X);

    /// <summary>y component of a × b.</summary>
    internal static Interval Area(IntervalVec3 a, IntervalVec3 b) => a.Z * b.X - a.X * b.Z;
}
