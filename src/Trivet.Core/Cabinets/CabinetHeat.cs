using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Cabinets;

/// <summary>
/// Heat of an enclosure in balance: what its walls and the air through it carry off, P = k·A·ΔT + ρ(T)·c·V·ΔT. Inside the air is mixed; a module
/// above another sees more. What the sun puts in and a cooler takes out counts as stated; heat through the mounting plate is left out.
/// </summary>
/// <param name="Power">Watts at load.</param>
/// <param name="RestPower">Watts while nothing moves.</param>
/// <param name="Surface">Effective cooling surface, m².</param>
/// <param name="Transfer">W/(m²·K).</param>
/// <param name="Ambient">Of the air outside, °C.</param>
/// <param name="Flow">Air driven through, m³/s, at the temperature inside.</param>
public sealed record CabinetHeat(double Power, double RestPower, double Surface, double Transfer, double Ambient, double Flow)
{
    /// <summary>Watts that come in from outside, and that a cooler takes out.</summary>
    public double Gain { get; init; }
    public double Cooling { get; init; }

    /// <summary>Watts that walls and air have to carry off; none where the cooler takes all, which then holds no less than the ambient.</summary>
    public double Net => Math.Max(0, Power + Gain - Cooling);

    private const double Zero = 273.15, Pressure = 101_325;
    /// <summary>J/(kg·K), of dry air: gas constant and heat capacity at constant pressure (textbook values, from memory).</summary>
    private const double GasConstant = 287.05, HeatCapacity = 1005;

    /// <summary>Watts through a square metre for a kelvin, air moving by itself (usual values of makers, from memory).</summary>
    public static double TransferOf(EnclosureWall wall) => wall switch
    {
        EnclosureWall.StainlessSteel => 3.7,
        EnclosureWall.Aluminium => 12,
        EnclosureWall.Plastic => 3.5,
        _ => 5.5,
    };

    /// <summary>Seconds of a year of 8760 hours.</summary>
    public const double Year = 8760 * 3600.0;

    /// <summary>Temperature of the air inside at load, °C; infinite where nothing carries the heat off.</summary>
    public double Inside => At(Net);

    /// <summary>The balance is a quadratic in the temperature, since the density of air falls with it.</summary>
    public double At(double power)
    {
        double outside = Ambient + Zero, walls = Transfer * Surface, air = HeatCapacity * Flow * Pressure / GasConstant;
        if (power <= 0) return Ambient;
        double b = air - walls * outside - power, root = Math.Sqrt(b * b + 4 * walls * air * outside);
        // Whichever form does not take a difference of nearly equal numbers.
        return (b > 0 ? 2 * air * outside / (b + root) : walls > 0 ? (root - b) / (2 * walls) : double.PositiveInfinity) - Zero;
    }

    /// <summary>Air that must be driven through for a temperature inside, m³/s: none where the walls do, infinite where it is not above the ambient.</summary>
    public double FlowFor(double inside)
    {
        double rise = inside - Ambient, rest = Net - Transfer * Surface * rise;
        return rest <= 0 ? 0 : rise > 0 ? AirFlow(rest, rise, inside) : double.PositiveInfinity;
    }

    /// <summary>Air that carries a power off, m³/s: V = P/(ρ·c·ΔT), ρ at the temperature it leaves with. Near 32 °C that is 3.1·P/ΔT in m³/h.</summary>
    public static double AirFlow(double power, double rise, double temperature) =>
        power * GasConstant * (temperature + Zero) / (Pressure * HeatCapacity * rise);

    /// <summary>Energy of a year at rest outside the hours of running, J: what leaving it on costs.</summary>
    public double StandbyEnergy(double running) => RestPower * Math.Max(0, Year - running);

    /// <summary>Effective cooling surface, m², from the sizes: faces weighted by how they stand (IEC TR 60890 table, from memory).</summary>
    public static double SurfaceOf(double width, double height, double depth, EnclosureStanding standing) => standing switch
    {
        EnclosureStanding.Free => 1.8 * height * (width + depth) + 1.4 * width * depth,
        EnclosureStanding.AtWall => 1.4 * width * (height + depth) + 1.8 * depth * height,
        EnclosureStanding.EndOfRowFree => 1.4 * depth * (height + width) + 1.8 * width * height,
        EnclosureStanding.EndOfRowAtWall => 1.4 * height * (width + depth) + 1.4 * width * depth,
        EnclosureStanding.MiddleOfRowFree => 1.8 * width * height + 1.4 * width * depth + depth * height,
        _ => 1.4 * width * (height + depth) + depth * height,
    };

    /// <summary>Null while something is missing, see the reading.</summary>
    public static CabinetHeat? Read(Cell cell, Reading reading)
    {
        const string at = "/cabinet/enclosure";
        var e = cell.Cabinet.Enclosure;
        reading.Used("/cabinet/modules", string.Join('\n', cell.Cabinet.Modules.Keys));
        double rest = 0, load = 0;
        foreach (var (id, m) in cell.Cabinet.Modules)
        {
            double own = reading.Need(m.HeatAtRest, $"/cabinet/modules/{id}/heatAtRest");
            rest += own;
            load += reading.Or(m.HeatAtLoad, $"/cabinet/modules/{id}/heatAtLoad", own);
        }
        reading.Used(at + "/coolingSurface", e.CoolingSurface);
        double surface = e.CoolingSurface ?? SurfaceOf(
            reading.Need(e.Width, at + "/width"), reading.Need(e.Height, at + "/height"), reading.Need(e.Depth, at + "/depth"),
            reading.Or(e.Standing, at + "/standing", EnclosureStanding.AtWall));
        double transfer = reading.Or(e.HeatTransfer, at + "/heatTransfer", TransferOf(reading.Or(e.Wall, at + "/wall", EnclosureWall.PaintedSteel))), ambient = reading.Need(e.Ambient, at + "/ambient");
        double flow = reading.Or(e.FanFlow, at + "/fanFlow", 0);
        double gain = reading.Or(e.SolarGain, at + "/solarGain", 0), cooling = reading.Or(e.CoolingPower, at + "/coolingPower", 0);
        return reading.Complete ? new(load, rest, surface, transfer, ambient, flow) { Gain = gain, Cooling = cooling } : null;
    }
}

/// <summary>The module that bears least warmth.</summary>
public sealed record Tenderest(string Module, double Largest)
{
    /// <summary>Null where no module states what it bears.</summary>
    public static Tenderest? Read(Cell cell, Reading reading)
    {
        Tenderest? least = null;
        foreach (var (id, m) in cell.Cabinet.Modules.InOrder())
        {
            reading.Used($"/cabinet/modules/{id}/largestAmbient", m.LargestAmbient);
            if (m.LargestAmbient is { } t && !(t >= least?.Largest)) least = new(id, t);
        }
        return least;
    }
}
