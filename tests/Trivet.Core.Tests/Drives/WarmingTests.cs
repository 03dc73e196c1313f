using Trivet.Drives;
using Xunit;

namespace Trivet.Core.Tests.Drives;

/// <summary>Held against the exact solution of one heated body: 63.2 % of the rise after one time constant.</summary>
public sealed class WarmingTests
{
    [Fact]
    public void A_winding_warms_exponentially_to_the_stated_rise_at_the_continuous_torque()
    {
        var warming = Warming.Of(35, 80, 1200, 1);
        Assert.Equal(35, warming.At(0), 1e-12);
        Assert.Equal(35 + 80 * 0.6321205588, warming.At(1200), 1e-7);
        Assert.Equal(115, warming.Steady);
        Assert.Equal(115, warming.At(8 * 3600), 1e-8);
    }

    [Fact]
    public void A_shift_ends_where_the_exponential_is_then_and_without_one_at_the_steady_state()
    {
        Assert.Equal(35 + 80 * 0.6321205588, Warming.Of(35, 80, 1200, 1, 1200).AtEnd, 1e-7);
        Assert.Equal(115, Warming.Of(35, 80, 1200, 1).AtEnd);
    }

    [Fact]
    public void Half_the_torque_heats_a_quarter() => Assert.Equal(20, Warming.Of(0, 80, 1200, 0.25).Steady, 1e-12);

    /// <summary>Steps of the differential equation τ·dϑ/dt = ϑ∞ − ϑ taken finely come to the same.</summary>
    [Fact]
    public void The_exponential_solves_its_differential_equation()
    {
        var warming = Warming.Of(25, 60, 600, 0.7);
        double temperature = 25, h = 0.01;
        for (int i = 0; i < 60_000; i++) temperature += h * (warming.Steady - temperature) / 600;
        Assert.Equal(warming.At(600), temperature, 1e-3);
    }
}
