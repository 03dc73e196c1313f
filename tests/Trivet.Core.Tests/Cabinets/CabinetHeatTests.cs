using CsCheck;
using Trivet.Cabinets;
using Trivet.Cells;
using Trivet.Findings;
using Xunit;

namespace Trivet.Core.Tests.Cabinets;

public sealed class CabinetHeatTests
{
    /// <summary>Without a fan ΔT = P/(k·A): 300 W through 1.8 m² of painted steel at 5.5 W/(m²·K) is 30.3 K (closed form).</summary>
    [Fact]
    public void Walls_alone_are_a_division() =>
        Assert.Equal(35 + 300 / (5.5 * 1.8), new CabinetHeat(300, 40, 1.8, 5.5, 35, 0).Inside, 1e-9);

    /// <summary>The usual V[m³/h] = 3.1·P[W]/ΔT[K] of fans near sea level (common practice, no source): met at 32 °C, and within 6 % from 20 to 45 °C.</summary>
    [Fact]
    public void The_flow_is_the_usual_rule_of_fans()
    {
        Assert.Equal(3.1, 3600 * CabinetHeat.AirFlow(1, 1, 32), 0.01);
        Gen.Double[20, 45].Sample(t => Assert.InRange(3600 * CabinetHeat.AirFlow(1, 1, t), 3.1 * 0.94, 3.1 * 1.06));
    }

    /// <summary>Density and heat capacity of dry air at 20 °C: 1.204 kg/m³ and 1005 J/(kg·K) (textbook values, from memory).</summary>
    [Fact]
    public void Air_at_20_degrees_carries_1210_joules_per_cubic_metre_and_kelvin() =>
        Assert.Equal(1.204 * 1005, 1 / CabinetHeat.AirFlow(1, 1, 20), 1.0);

    [Fact]
    public void What_goes_in_comes_out() =>
        Gen.Select(Gen.Double[5, 2000], Gen.Double[0, 4], Gen.Double[3, 6], Gen.Double[10, 45], Gen.Double[0.001, 0.1]).Sample((p, a, k, ambient, flow) =>
        {
            var heat = new CabinetHeat(p, 0, a, k, ambient, flow);
            double t = heat.Inside;
            if (double.IsInfinity(t)) return;
            double carried = k * a * (t - ambient) + flow * 101_325 / (287.05 * (t + 273.15)) * 1005 * (t - ambient);
            Assert.Equal(p, carried, 1e-6 * p);
            Assert.Equal(flow, heat.FlowFor(t), 1e-6 * flow);
        });

    [Fact]
    public void Without_walls_and_air_nothing_carries_it_off() => Assert.True(double.IsPositiveInfinity(new CabinetHeat(10, 10, 0, 5.5, 30, 0).Inside));

    /// <summary>A cube of one metre: free all round 1.8·2 + 1.4 = 5, at a wall 1.4·2 + 1.8 = 4.6, in the middle of a row at a wall 3.8 (IEC TR 60890, from memory).
    /// What is covered gives off less, whatever the sizes.</summary>
    [Fact]
    public void The_surface_shrinks_as_faces_are_covered()
    {
        Assert.Equal(5.0, CabinetHeat.SurfaceOf(1, 1, 1, EnclosureStanding.Free), 1e-12);
        Assert.Equal(4.6, CabinetHeat.SurfaceOf(1, 1, 1, EnclosureStanding.AtWall), 1e-12);
        Assert.Equal(3.8, CabinetHeat.SurfaceOf(1, 1, 1, EnclosureStanding.MiddleOfRowAtWall), 1e-12);
        Gen.Select(Gen.Double[0.2, 2], Gen.Double[0.2, 2], Gen.Double[0.2, 2]).Sample((w, h, d) =>
        {
            double S(EnclosureStanding s) => CabinetHeat.SurfaceOf(w, h, d, s);
            Assert.True(S(EnclosureStanding.Free) >= S(EnclosureStanding.EndOfRowFree) && S(EnclosureStanding.EndOfRowFree) >= S(EnclosureStanding.MiddleOfRowFree));
            Assert.True(S(EnclosureStanding.AtWall) >= S(EnclosureStanding.EndOfRowAtWall) && S(EnclosureStanding.EndOfRowAtWall) >= S(EnclosureStanding.MiddleOfRowAtWall));
            Assert.True(S(EnclosureStanding.Free) >= S(EnclosureStanding.AtWall));
        });
    }

    /// <summary>50 W through the 4760 h that a cell of 4000 h a year stands: 238 kWh (closed form).</summary>
    [Fact]
    public void Left_on_it_costs_a_year() => Assert.Equal(238, new CabinetHeat(0, 50, 1, 5, 30, 0).StandbyEnergy(4000 * 3600) / 3.6e6, 1e-9);

    /// <summary>Walls alone, worked by hand: 2 m² of painted sheet steel, 5.5 W/(m²·K), carry 11 W for a kelvin. 110 W warm it by 10 K, with 55 W of sun by 15 K, and a cooler of 90 W leaves 75 W, 6.8 K.</summary>
    [Fact]
    public void Sun_cooler_and_walls_take_their_part()
    {
        Cell With(Func<Enclosure, Enclosure> change) => Cell.Empty with
        {
            Cabinet = new()
            {
                Modules = Keyed.Empty<Module>().Add("m", new() { HeatAtRest = 110, LargestAmbient = 55 }),
                Enclosure = change(new() { CoolingSurface = 2, Ambient = 35 }),
            },
        };
        double Inside(Func<Enclosure, Enclosure> change) => CabinetHeat.Read(With(change), new())!.Inside;
        Assert.Equal(45, Inside(e => e), 1e-9);
        Assert.Equal(50, Inside(e => e with { SolarGain = 55 }), 1e-9);
        Assert.Equal(35 + 75 / 11.0, Inside(e => e with { SolarGain = 55, CoolingPower = 90 }), 1e-9);
        // A cooler that takes all holds no less than the air outside.
        Assert.Equal(35, Inside(e => e with { CoolingPower = 500 }), 1e-9);
        Assert.Equal(35 + 110 / 24.0, Inside(e => e with { Wall = EnclosureWall.Aluminium }), 1e-9);
        Assert.Equal(35 + 110 / 8.0, Inside(e => e with { Wall = EnclosureWall.Aluminium, HeatTransfer = 4 }), 1e-9);
        var both = Assert.Single(CabinetStage.Of(With(e => e with { CoolingPower = 90, FanFlow = 0.01 })).Findings.OfType<Unjudged>(), f => f.Subject.Pointer == "/cabinet/enclosure/coolingPower");
        Assert.Equal(CabinetReasons.CoolerAndFan.Id, both.Detail!.Id);
    }
}
