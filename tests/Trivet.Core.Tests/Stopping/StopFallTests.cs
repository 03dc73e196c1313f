using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Core.Tests.Motion;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Stopping;
using Xunit;

namespace Trivet.Core.Tests.Stopping;

public sealed class StopFallTests
{
    /// <summary>
    /// School mechanics in two steps: free for 0.1 s, then 2.039 kg braked by 60 N less their weight of 20 N. And energy: what weight does over the whole way, the brake takes over its part.
    /// </summary>
    [Fact]
    public void Free_fall_and_the_catching_of_it_add_up()
    {
        const double G = 9.80665, T = 0.1, Load = 20, Holds = 60, Mass = Load / G;
        double free = G * T * T / 2, v = G * T, caught = v * v / (2 * (Holds - Load) / Mass), found = StopFall.Sink(G, T, Load, Holds);
        Assert.Equal(free + caught, found, 1e-12);
        Assert.Equal(Load * found, Holds * caught, 1e-9);
        Assert.True(double.IsNaN(StopFall.Sink(G, T, Load, Load)));
    }

    /// <summary>The free acceleration at rest is that with which the fall that is followed to its end begins.</summary>
    [Fact]
    public void Rest_and_the_begin_of_a_fall_agree()
    {
        var cell = Held(Holding.Nothing, double.NaN);
        foreach (var place in Falls.Of(cell, TestContext.Current.CancellationToken).Places.Where(p => p.Point == FallPoint.Approach))
        {
            var rest = Falls.AtRest(cell, place.Pointer[(place.Pointer.LastIndexOf('/') + 1)..], new(), ImmutableArray.CreateBuilder<Contradiction>())!;
            var all = place.Cases[^1].AsHeld.Fall;
            for (int i = 0; i < rest.Chains.Length; i++)
            {
                Assert.Equal(all.Acceleration[i], rest.Chains[i].Free, 1e-9);
                Assert.Equal(Math.Abs(all.Load[i]), rest.Chains[i].Load, 1e-9);
            }
        }
    }

    [Theory]
    [InlineData(Holding.Brake, 100, 0.05, StopCategory.Zero, 0, ChainAtStop.Sinks)]
    [InlineData(Holding.Brake, 100, 0.05, StopCategory.One, 0.06, ChainAtStop.Stays)]
    [InlineData(Holding.Brake, 100, 0.05, StopCategory.One, 0.02, ChainAtStop.Sinks)]
    [InlineData(Holding.Brake, 100, 0, StopCategory.Zero, 0, ChainAtStop.Stays)]
    [InlineData(Holding.Friction, 100, 0.05, StopCategory.Zero, 0, ChainAtStop.Stays)]
    [InlineData(Holding.Brake, 1, 0.05, StopCategory.Zero, 0, ChainAtStop.Falls)]
    [InlineData(Holding.Nothing, 100, 0, StopCategory.One, 1, ChainAtStop.Falls)]
    [InlineData(Holding.Prop, 100, 0, StopCategory.One, 1, ChainAtStop.OnlyByProp)]
    [InlineData(Holding.Nothing, 100, 0, StopCategory.Two, 0, ChainAtStop.Powered)]
    public void What_becomes_of_a_chain_follows_from_what_holds_it(Holding holding, double force, double delay, StopCategory stop, double torque, ChainAtStop becomes)
    {
        var cell = Held(holding, force, delay);
        var fall = StopFall.Of(cell, new() { StopCategory = stop, TorqueTime = torque }, StopStage.Places(cell), new())!;
        Assert.All(fall.Chains, c => Assert.Equal(becomes, c.Becomes));
        Assert.Equal(becomes is ChainAtStop.Powered or ChainAtStop.Stays or ChainAtStop.Sinks, fall.Held);
        if (becomes == ChainAtStop.Sinks) Assert.InRange(fall.ToolDrop, 1e-4, 0.05);
        else if (fall.Held) Assert.Equal(0, fall.ToolDrop, 1e-12);
        else Assert.True(double.IsNaN(fall.ToolDrop));
    }

    internal static Cell Held(Holding holding, double force, double? delay = null)
    {
        var cell = MotionCells.Rail;
        return cell with { Robot = cell.Robot with { Common = cell.Robot.Common with { Holding = holding, HoldingForce = double.IsNaN(force) ? null : force, BrakeDelay = delay } } };
    }
}
