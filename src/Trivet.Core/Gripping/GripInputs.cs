using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Gripping;

/// <summary>Cups as they hold one part.</summary>
/// <param name="Diameter">On which one cup holds, metres.</param>
/// <param name="Circle">On which several stand, metres; zero for one.</param>
/// <param name="Level">Vacuum, pascals below ambient.</param>
public sealed record CupHold(int Cups, double Diameter, double Circle, double Level, double Safety, Interval Friction)
{
    /// <summary>Force of all cups straight on the part, newtons.</summary>
    public double Force => Cups * Math.PI / 4 * Diameter * Diameter * Level;

    /// <summary>
    /// Smallest distance from the middle of the cups to the edge about which the part would tip, metres: of n cups evenly on a circle of radius R, the side
    /// of the polygon they make is R·cos(π/n) away, and the lip stands half a cup outside it.
    /// </summary>
    public double Lever => (Cups > 1 ? Circle / 2 * Math.Max(0, Math.Cos(Math.PI / Cups)) : 0) + Diameter / 2;
}

/// <summary>Generator, hose and valve.</summary>
/// <param name="Ambient">Pressure of the surroundings, pascals.</param>
/// <param name="Volume">Of hose and cups together, m³.</param>
/// <param name="Leakage">Free air at the level, m³/s.</param>
/// <param name="BlowOff">Free air, m³/s; not a number without one.</param>
public sealed record CupFlow(double Ambient, double Level, double Deepest, double Suction, double Leakage, double Volume, double ValveTime, double BlowOff);

/// <summary>Fingers as they hold one part.</summary>
/// <param name="Force">Of one finger, newtons.</param>
public sealed record FingerHold(int Count, GripKind Grip, double Force, double Safety, Interval Friction);

/// <summary>What became of reading: null while something is missing (the reading lists it) or a problem stands.</summary>
public sealed record GripRead<T>(T? Grip, ImmutableArray<Contradiction> Problems) where T : class;

/// <summary>Reads cups and fingers. A safety factor is needed: there is none that fits every part, and its source stands beside it.</summary>
public static class GripInputs
{
    public const string VacuumAt = "/tool/vacuum", FingersAt = "/tool/fingers";

    /// <summary>Standard atmosphere, pascals (ISO 2533). Higher up there is less: state a smaller level then.</summary>
    public const double Atmosphere = 101325;

    public static bool HasVacuum(Cell cell, Reading reading)
    {
        reading.Used(VacuumAt + "/cups", cell.Tool.Vacuum.Cups);
        return cell.Tool.Vacuum.Cups is not null;
    }

    public static bool HasFingers(Cell cell, Reading reading)
    {
        reading.Used(FingersAt + "/count", cell.Tool.Fingers.Count);
        return cell.Tool.Fingers.Count is not null;
    }

    public static GripRead<CupHold> Cups(Cell cell, string part, Reading reading)
    {
        var (vacuum, fields) = (cell.Tool.Vacuum, new GripReading(VacuumAt, reading));
        int cups = fields.Count(vacuum.Cups, "cups");
        double diameter = fields.Positive(vacuum.CupDiameter, "cupDiameter"), circle = 0;
        if (cups > 1) circle = fields.Positive(vacuum.CupCircle, "cupCircle");
        double level = Level(fields, vacuum.Level, "level"), safety = fields.Positive(vacuum.Safety, "safety");
        var friction = Friction.Read(fields, vacuum.FrictionFrom, vacuum.FrictionTo, cell, part);
        return new(fields.Good ? new(cups, diameter, circle, level, safety, friction) : null, fields.Problems);
    }

    public static GripRead<CupFlow> Flow(Cell cell, Reading reading)
    {
        var (vacuum, fields) = (cell.Tool.Vacuum, new GripReading(VacuumAt, reading));
        double level = Level(fields, vacuum.Level, "level"), deepest = Level(fields, vacuum.DeepestLevel, "deepestLevel");
        double suction = fields.Positive(vacuum.Suction, "suction"), leakage = fields.NotNegative(vacuum.Leakage, "leakage", 0);
        var (hose, length) = Hose(cell, fields);
        double dead = fields.NotNegative(vacuum.DeadVolume, "deadVolume", 0), valve = fields.NotNegative(vacuum.ValveTime, "valveTime", 0);
        double blow = reading.Or(vacuum.BlowOff, VacuumAt + "/blowOff", double.NaN);
        if (blow <= 0) fields.Wrong("blowOff", GripReasons.NotPositive);
        return new(
            fields.Good ? new(Atmosphere, level, deepest, suction, leakage, Math.PI / 4 * hose * hose * length + dead, valve, blow) : null, fields.Problems);
    }

    /// <summary>Inner diameter and length of the hose to the cups, metres: of the hose that is named, else as stated beside the cups.</summary>
    private static (double Diameter, double Length) Hose(Cell cell, GripReading fields)
    {
        var (vacuum, reading) = (cell.Tool.Vacuum, fields.Reading);
        reading.Used(VacuumAt + "/hose", vacuum.Hose);
        if (vacuum.Hose is not { } id) return (fields.Positive(vacuum.HoseDiameter, "hoseDiameter"), fields.NotNegative(reading.Need(vacuum.HoseLength, VacuumAt + "/hoseLength"), "hoseLength", 0));
        reading.Used(VacuumAt + "/hoseDiameter", vacuum.HoseDiameter);
        reading.Used(VacuumAt + "/hoseLength", vacuum.HoseLength);
        reading.Used("/pneumatics/hoses", string.Join('\n', cell.Pneumatics.Hoses.Keys));
        if (vacuum.HoseDiameter is not null || vacuum.HoseLength is not null) fields.Wrong(vacuum.HoseDiameter is not null ? "hoseDiameter" : "hoseLength", GripReasons.HoseTwice);
        if (!cell.Pneumatics.Hoses.TryGetValue(id, out var hose))
        {
            fields.Wrong("hose", GripReasons.NoSuchHose);
            return (double.NaN, double.NaN);
        }
        string at = $"/pneumatics/hoses/{id}";
        double diameter = reading.Need(hose.InnerDiameter, at + "/innerDiameter"), length = reading.Need(hose.Length, at + "/length");
        if (diameter <= 0 || length < 0) fields.Wrong("hose", GripReasons.NotPositive);
        return (diameter, length);
    }

    public static GripRead<FingerHold> Fingers(Cell cell, string part, Reading reading)
    {
        var (fingers, fields) = (cell.Tool.Fingers, new GripReading(FingersAt, reading));
        int count = fields.Count(fingers.Count, "count");
        var grip = reading.Or(fingers.Grip, FingersAt + "/grip", GripKind.Friction);
        double force = fields.Positive(fingers.Force, "force"), safety = fields.Positive(fingers.Safety, "safety");
        var friction = grip == GripKind.Friction ? Friction.Read(fields, fingers.FrictionFrom, fingers.FrictionTo, cell, part) : new Interval(1, 1);
        return new(fields.Good ? new(count, grip, force, safety, friction) : null, fields.Problems);
    }

    private static double Level(GripReading fields, double? value, string name)
    {
        double level = fields.Positive(value, name);
        if (level >= Atmosphere) fields.Wrong(name, GripReasons.DeeperThanNothing);
        return level;
    }
}
