using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Motion;

namespace Trivet.Stopping;

/// <summary>What becomes of a chain at a stop.</summary>
public enum ChainAtStop
{
    /// <summary>The drive keeps its torque.</summary>
    Powered,
    /// <summary>What keeps it up does so at once.</summary>
    Stays,
    /// <summary>It sinks until its brake has closed and caught it.</summary>
    Sinks,
    /// <summary>Nothing that can be counted on keeps it up: it goes to the end of its travel.</summary>
    Falls,
    /// <summary>A prop holds it where somebody has set one, and only there.</summary>
    OnlyByProp,
}

/// <summary>A chain at a stop, at the worst of the places looked at.</summary>
/// <param name="Delay">Seconds without torque until a brake holds.</param>
/// <param name="Sink">Of the drive coordinate, metres or radians; zero where it stays, not a number where it falls.</param>
public sealed record ChainSink(string Chain, ChainHolding Holding, ChainAtStop Becomes, double Load, double Delay, double Sink);

/// <summary>What comes down at a stop: an estimate from the masses described, from standstill. How far the cell runs on from speed is measured.</summary>
/// <param name="ToolDrop">Largest drop of the tool over the places, metres; not a number where a chain falls.</param>
/// <param name="Place">Station of that drop.</param>
public sealed record StopFall(ImmutableArray<ChainSink> Chains, double ToolDrop, string? Place)
{
    /// <summary>Every chain is kept up by something that is there whenever the stop comes.</summary>
    public bool Held => Chains.All(c => c.Becomes is ChainAtStop.Powered or ChainAtStop.Stays or ChainAtStop.Sinks);

    /// <summary>
    /// How far a chain comes down that nothing holds for a time and a brake then catches: t free at acceleration a, s = a·t²/2; the same mass is then braked by holding less
    /// load, which takes L/(H − L) of that again. Together a·t²/2 · H/(H − L): school mechanics with one mass a chain, so an estimate where chains are loaded unevenly.
    /// </summary>
    public static double Sink(double acceleration, double delay, double load, double holds) =>
        holds > load ? acceleration * delay * delay / 2 * holds / (holds - load) : double.NaN;

    /// <summary>Null where no place is described far enough (the reading tells).</summary>
    public static StopFall? Of(Cell cell, SafetyFunction function, ImmutableArray<RestPlace> places, Reading reading)
    {
        if (places.IsEmpty) return null;
        double[] delays = [.. places[0].Chains.Select(c => Delay(cell, function, c.Chain, reading))];
        ChainSink[] worst = [.. Enumerable.Range(0, delays.Length).Select(i => places.Select(p => At(p.Chains[i], function, delays[i])).MaxBy(s => (double.IsNaN(s.Sink) ? double.PositiveInfinity : s.Sink, s.Load))!)];
        double drop = 0;
        string? where = null;
        foreach (var place in places)
        {
            double here = place.Chains.Select((c, i) => At(c, function, delays[i]).Sink * c.Drop * Math.Sign(c.Free)).Sum();
            if (where is null || double.IsNaN(here) || here > drop) (drop, where) = (here, place.Pointer);
            if (double.IsNaN(here)) break;
        }
        return new([.. worst], drop, where);
    }

    private static ChainSink At(RestChain chain, SafetyFunction function, double delay)
    {
        var holding = chain.Holding;
        if (function.StopCategory is null or StopCategory.Two) return new(chain.Chain, holding, ChainAtStop.Powered, chain.Load, 0, 0);
        if (holding.Kind == Holding.Prop) return new(chain.Chain, holding, ChainAtStop.OnlyByProp, chain.Load, 0, double.NaN);
        if (!(holding.Counted > chain.Load)) return new(chain.Chain, holding, ChainAtStop.Falls, chain.Load, 0, double.NaN);
        double without = holding.Kind == Holding.Brake ? delay : 0;
        return without > 0
            ? new(chain.Chain, holding, ChainAtStop.Sinks, chain.Load, without, Sink(Math.Abs(chain.Free), without, chain.Load, holding.Counted))
            : new(chain.Chain, holding, ChainAtStop.Stays, chain.Load, 0, 0);
    }

    /// <summary>Of the brake, less what the torque is kept on for after standstill.</summary>
    private static double Delay(Cell cell, SafetyFunction function, string chain, Reading reading)
    {
        string at = $"{ChainReading.ChainsPointer}/{chain}/brakeDelay";
        double? own = cell.Robot.Chains.TryGetValue(chain, out var c) ? c.BrakeDelay : null;
        reading.Used(at, own);
        reading.Used("/robot/common/brakeDelay", cell.Robot.Common.BrakeDelay);
        double delay = own ?? cell.Robot.Common.BrakeDelay ?? 0;
        return Math.Max(0, delay - (function.StopCategory == StopCategory.One ? function.TorqueTime ?? 0 : 0));
    }
}
