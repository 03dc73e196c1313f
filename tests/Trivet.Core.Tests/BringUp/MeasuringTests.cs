using System.Collections.Immutable;
using Trivet.BringUp;
using Trivet.Cells;
using Xunit;

namespace Trivet.Core.Tests.BringUp;

public sealed class MeasuringTests
{
    private static readonly Cell Cell = Cell.Empty with
    {
        Mount = new Mount { Z = 1.7 },
        Robot = new Robot
        {
            Common = new ChainDescription { BaseRadius = 0.33, Rod = 0.56 },
            Chains = Keyed.Empty<ChainDescription>()
                .Add("a", new ChainDescription { Order = 1, Azimuth = Math.PI / 2 })
                .Add("b", new ChainDescription { Order = 2, Azimuth = Math.PI * 7 / 6, Rod = 0.561 })
                .Add("c", new ChainDescription { Order = 3, Azimuth = Math.PI * 11 / 6 }),
        },
        Stations = Keyed.Empty<Station>()
            .Add("tray", new Station { Kind = StationKind.Tray, Z = 0.85, Columns = 4, ColumnPitch = 0.06, Rows = 1, RowPitch = 0.06 }),
    };

    [Fact]
    public void Steps_are_the_lengths_the_description_states_in_walking_order() => Assert.Equal(
        ["MountHeight:/mount/z", "ChainDistance:/robot/chains:a to b", "ChainDistance:/robot/chains:a to c", "ChainDistance:/robot/chains:b to c",
            "RodLength:/robot/chains/a", "RodLength:/robot/chains/b", "RodLength:/robot/chains/c", "StationHeight:/stations/tray", "TrayAlongColumns:/stations/tray"],
        MeasuringSteps.Of(Cell).Select(m => m.Id));

    [Fact]
    public void Joints_a_third_of_a_turn_apart_are_a_side_of_the_triangle_in_their_circle()
    {
        // Euclid, Elements XIII.12: the square on the side of an equilateral triangle in a circle is three times the square on the radius.
        foreach (var m in MeasuringSteps.Of(Cell).Where(m => m.What == MeasuredLength.ChainDistance))
            Assert.Equal(0.33 * Math.Sqrt(3), m.Planned, 12);
    }

    [Fact]
    public void A_chain_with_a_length_of_its_own_is_measured_against_it()
    {
        var rods = MeasuringSteps.Of(Cell).Where(m => m.What == MeasuredLength.RodLength).ToImmutableArray();
        Assert.Equal([0.56, 0.561, 0.56], rods.Select(m => m.Planned));
        Assert.All(rods, m => Assert.Contains("/robot/common/rod", m.Inputs));
    }

    [Theory]
    // Permissible deviations of ISO 2768-1, table 1, class m, from memory: size and deviation in millimetres.
    [InlineData(5, 0.1), InlineData(20, 0.2), InlineData(60, 0.3), InlineData(300, 0.5), InlineData(560, 0.8), InlineData(1700, 1.2), InlineData(2500, 2)]
    public void Tolerance_follows_the_size(double size, double deviation)
    {
        var limit = Assert.Single(MeasuringSteps.Of(Cell.Empty with { Mount = new Mount { Z = size / 1000 } })).Limit;
        Assert.Equal((size - deviation) / 1000, limit.Lower, 9);
        Assert.Equal((size + deviation) / 1000, limit.Upper, 9);
    }
}
