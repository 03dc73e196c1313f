using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Drives;

/// <summary>
/// Single changes of the drives that lift a finding to its comfort band: another ratio, a stronger belt, a larger capacitor. Each is tried in
/// steps of a sixth of a decade or less, rounded as a person would, and promised with the margin computed with it in place. The motion is
/// held, since the force at the drive coordinate does not depend on motor and transmission; a slower motion is for the trade of motion to advise.
/// Changes that make something else fall short, or more so, are not offered. A changed ratio asks for a new drive step: what
/// <see cref="DriveRules.Resolution"/> says of the old one does not count.
/// </summary>
public static class DriveAdvice
{
    private const int MostOffered = 3;

    private static readonly double[] Factors = [1.1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4, 5, 6, 8, 10];

    [Flags]
    private enum Ways
    {
        Up = 1,
        Down = 2,
    }

    private sealed record Lever(string Pointer, double From, Ways Ways, Func<double, Cell> With);

    /// <summary>Changes that help a finding of the drives, the least first; empty when none does.</summary>
    public static ImmutableArray<Advice> For(Cell cell, ImmutableArray<CycleSeries> cycles, Finding finding)
    {
        double target = Math.Max(finding.Rule.ComfortBand, 0.01);
        var now = Outcome.Of(DriveChecks.Of(cell, cycles), finding.Id);
        if (now.Margin >= target) return [];
        var found = new List<(Advice Advice, double Factor)>();
        foreach (var lever in Levers(cell, finding))
        {
            foreach (bool up in new[] { true, false })
            {
                if (!(lever.From > 0) || !lever.Ways.HasFlag(up ? Ways.Up : Ways.Down)) continue;
                foreach (double factor in Factors)
                {
                    double to = Round(up ? lever.From * factor : lever.From / factor);
                    var then = Outcome.Of(DriveChecks.Of(lever.With(to), cycles), finding.Id);
                    if (!(then.Margin >= target)) continue;
                    if (!(then.Elsewhere < Math.Min(0, now.Elsewhere)) && then.Open <= now.Open)
                        found.Add((new(lever.Pointer, lever.From, to, then.Margin, then.Elsewhere), factor));
                    break;
                }
            }
        }

        return [.. found.OrderBy(f => f.Factor).ThenBy(f => f.Advice.Pointer, StringComparer.Ordinal).Select(f => f.Advice).Take(MostOffered)];
    }

    /// <summary>Two significant digits.</summary>
    private static double Round(double value)
    {
        // Through decimal, so that 0.03 is the number a person would type.
        int digits = 1 - (int)Math.Floor(Math.Log10(value));
        double scale = Math.Pow(10, Math.Abs(digits));
        return digits >= 0 ? Math.Round(value * scale) / scale : Math.Round(value / scale) * scale;
    }

    private static IEnumerable<Lever> Levers(Cell cell, Finding finding)
    {
        string axis = finding.Subject.Case;
        string id = finding.Rule.Id;
        if (id == DriveRules.Torque.Id || id == DriveRules.Speed.Id || id == DriveRules.Continuous.Id || id == DriveRules.Temperature.Id
            || id == DriveRules.LostStep.Id || id == DriveRules.InertiaRatio.Id)
            yield return Axis("ratio", d => d.Ratio, (d, v) => d with { Ratio = v }, Ways.Up | Ways.Down, 1);
        else if (id == DriveRules.Strand.Id)
            yield return Axis("largestStrandForce", d => d.LargestStrandForce, (d, v) => d with { LargestStrandForce = v }, Ways.Up);
        else if (id == DriveRules.Slack.Id)
            yield return Axis("pretension", d => d.Pretension, (d, v) => d with { Pretension = v }, Ways.Up);
        else if (id == DriveRules.Tooth.Id)
            yield return Axis("largestToothForce", d => d.LargestToothForce, (d, v) => d with { LargestToothForce = v }, Ways.Up);
        else if (id == DriveRules.Transmission.Id)
            yield return Axis("largestForce", d => d.LargestForce, (d, v) => d with { LargestForce = v }, Ways.Up);
        else if (id == DriveRules.Following.Id || id == DriveRules.Resonance.Id)
            yield return Axis("stiffness", d => d.Stiffness, (d, v) => d with { Stiffness = v }, Ways.Up);
        else if (id == DriveRules.VoltageLow.Id || id == DriveRules.VoltageHigh.Id || id == DriveRules.SupplyPower.Id || id == DriveRules.Braking.Id)
        {
            yield return Supply("capacitance", s => s.Capacitance, (s, v) => s with { Capacitance = v }, Ways.Up);
            if (id == DriveRules.Braking.Id) yield return Supply("brakingPower", s => s.BrakingPower, (s, v) => s with { BrakingPower = v }, Ways.Up);
            if (id == DriveRules.VoltageHigh.Id) yield return Supply("brakingResistance", s => s.BrakingResistance, (s, v) => s with { BrakingResistance = v }, Ways.Down);
            if (id is "drive.voltage-low" or "drive.supply-power") yield return Supply("largestPower", s => s.LargestPower, (s, v) => s with { LargestPower = v }, Ways.Up);
        }

        Lever Supply(string name, Func<MotorSupply, double?> field, Func<MotorSupply, double, MotorSupply> with, Ways ways) => new(
            $"/drives/supply/{name}", field(cell.Drives.Supply) ?? double.NaN, ways, v => cell with { Drives = cell.Drives with { Supply = with(cell.Drives.Supply, v) } });

        Lever Axis(string name, Func<AxisDrive, double?> field, Func<AxisDrive, double, AxisDrive> with, Ways ways, double fallback = double.NaN)
        {
            var drives = cell.Drives;
            string pointer = new AxisReading(cell, axis, new()).PointerOf(name, d => field(d) is not null);
            if (pointer.StartsWith("/drives/common/", StringComparison.Ordinal))
                return new(pointer, field(drives.Common) ?? fallback, ways, v => cell with { Drives = drives with { Common = with(drives.Common, v) } });
            var own = drives.Axes.GetValueOrDefault(axis) ?? new();
            return new(pointer, field(own) ?? fallback, ways, v => cell with { Drives = drives with { Axes = drives.Axes.SetItem(axis, with(own, v)) } });
        }
    }

    /// <summary>What a report says of one finding, and of all others.</summary>
    private readonly record struct Outcome(double Margin, double Elsewhere, int Open)
    {
        public static Outcome Of(DriveReport report, string id)
        {
            double own = double.NegativeInfinity, elsewhere = double.NaN;
            int open = 0;
            foreach (var f in report.Findings)
            {
                if (f is Unjudged) open++;
                if (double.IsNaN(f.Margin) || f.Rule.Id == DriveRules.Resolution.Id) continue;
                if (f.Id == id) own = f.Margin;
                else if (!(f.Margin >= elsewhere)) elsewhere = f.Margin;
            }

            return new(own, elsewhere, open);
        }
    }
}
