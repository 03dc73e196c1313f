using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Frames;

namespace Trivet.Motion;

/// <summary>What one motion makes of the frame.</summary>
public sealed record FrameUnder(FrameLoad Load, ImmutableArray<Settling> Settling, FootLoads Feet);

/// <summary>Everything that is known of a cell's frame, for command and page.</summary>
/// <param name="Study">Null while something is missing or contradicts itself, or part of the frame is loose.</param>
/// <param name="Problems">What can not be as stated.</param>
/// <param name="Missing">Pointers of what is not stated.</param>
public sealed record FrameReport(
    Cell Cell, FrameStudy? Study, ImmutableArray<Contradiction> Problems, ImmutableArray<string> Missing, ImmutableArray<FrameUnder> Under)
{
    /// <param name="more">Loads besides those of the cell's cycles.</param>
    public static FrameReport Of(Cell cell, ImmutableArray<FrameLoad> more, CancellationToken stop)
    {
        var reading = new Reading();
        if (!FrameMembers.Any(cell.Frame)) return new(cell, null, [new("/frame", FrameReasons.None)], [], []);
        var cycles = TimedCycle.Of(cell);
        var read = FrameRun.Read(cell, cycles, reading);
        if (read.Input is null) return new(cell, null, read.Problems, reading.MissingFields, []);
        var study = FrameStudy.Of(read.Input, cell.Frame.Measured);
        if (!study.Usable)
        {
            var reason = (study.Soft.Loose ?? study.Stiff.Loose) is { } loose ? FrameReasons.Loose.Naming(loose) : FrameReasons.NotConverged;
            return new(cell, null, [new("/frame", reason)], [], []);
        }

        double tolerance = FrameRun.Tolerance(cell, new())?.Value ?? double.NaN;
        var under = ImmutableArray.CreateBuilder<FrameUnder>();
        foreach (var load in cycles.Select(c => FrameRun.Load(cell, c)).OfType<FrameLoad>().Concat(more))
        {
            stop.ThrowIfCancellationRequested();
            if (!load.Reaction.IsFinite) continue;
            under.Add(new(load, tolerance > 0 ? Settling.Of(study, study.FineJoints, load, tolerance) : [], FootLoads.Of(study, study.FineJoints, load.Reaction, FrameRun.LoadFactor(cell, new()), cell.Frame.Feet.AnchorSpacing ?? double.NaN)));
        }

        return new(cell, study, [], [], under.ToImmutable());
    }

    /// <summary>What braces would be cut from: the box's brace profile, or the lightest there is; null without one.</summary>
    public FrameLine? BraceLine
    {
        get
        {
            var lines = Study?.Mesh.Input.Lines ?? [];
            return lines.FirstOrDefault(l => l.Bar.Profile == Cell.Frame.Box.BraceProfile) ?? lines.MinBy(l => l.Beam.Mass);
        }
    }

    public ImmutableArray<Brace> Braces(CancellationToken stop) => Study is { } study && BraceLine is { } line ? BraceAdvice.Find(study, line, stop) : [];
}
