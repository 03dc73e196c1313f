using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Motion;

namespace Trivet.Settings;

/// <summary>A quantity of the plan that a parameter holds. A reading of an axis depends on which way the controller counts it, so value and field are asked for with that.</summary>
/// <param name="Value">SI.</param>
/// <param name="Field">The field of the cell that decides; empty where several do.</param>
/// <param name="Usual">How the controller writes it where the parameter says nothing else; its size is not a number where the parameter has to state it.</param>
/// <param name="Span">What a rounding is held against, SI: the travel for a reading of an axis; not a number where it is the value itself.</param>
internal sealed record HeldQuantity(Func<bool, double> Value, Func<bool, string> Field, string SiUnit, SettingScale Usual, double Span = double.NaN)
{
    private static readonly SettingScale ToBeStated = new(false, false, 0, double.NaN), Plain = new(false, false, 0, 1);

    /// <summary>Null where the quantity can not be had; what is missing is in the reading, what is impossible among what is wrong.</summary>
    public static HeldQuantity? Read(Cell cell, SettingQuantity quantity, string? of, string at, Reading reading, ImmutableArray<Contradiction>.Builder wrong)
    {
        reading.Used(at + "/of", of);
        return quantity switch
        {
            <= SettingQuantity.HomeOffset => OfChains(),
            <= SettingQuantity.PeakCurrent => OfAxes(),
            <= SettingQuantity.Blend => OfMotion(),
            <= SettingQuantity.TcpZ => OfPlace(),
            _ => OfBus(),
        };

        HeldQuantity? OfChains()
        {
            var chains = RobotInputs.Chains(cell.Robot, reading);
            if (chains.IsEmpty) reading.Missing("/robot/chains");
            if (of is not null && !chains.Any(c => c.Id == of)) return No(SettingReasons.NoSuchChain.Naming([.. chains.Select(c => $"/robot/chains/{c.Id}")]));
            bool turns = reading.Need(cell.Robot.Family, "/robot/family", RobotFamily.RailDelta) == RobotFamily.CrankDelta;
            return Same(chains.Where(c => of is null || c.Id == of).Select(c => ((double, string)?)OfChain(quantity, c.Own, c.Fields)),
                quantity is SettingQuantity.Azimuth or SettingQuantity.Inclination || turns && quantity == SettingQuantity.HomeOffset ? "rad" : "m", ToBeStated);
        }

        HeldQuantity? OfAxes()
        {
            var axes = DriveInputs.Axes(cell.Robot, reading);
            if (of is not null && !axes.Contains(of)) return No(SettingReasons.NoSuchAxis.Naming([.. axes.Select(a => $"/drives/axes/{a}")]));
            string[] own = [.. axes.Where(a => of is null ? a is not ("rotary" or "linear") : a == of)];
            if (own.Length == 0) reading.Missing("/robot/chains");
            var read = own.Select(a => (Axis: a, Held: new AxisQuantity(cell, a, at, reading, wrong).Read(quantity))).ToArray();
            if (read.Any(r => r.Held is null) || read.Length == 0) return null;
            var first = read[0].Held!;
            if (read.All(r => Alike(r.Held!.Value(false), first.Value(false)) && Alike(r.Held.Value(true), first.Value(true)) && r.Held.Usual == first.Usual)) return first;
            return No(SettingReasons.NotTheSame.Naming([.. own.Select(a => $"/drives/axes/{a}")]));
        }

        HeldQuantity? OfMotion()
        {
            if (of is not null && !cell.Motion.Cycles.ContainsKey(of)) return No(SettingReasons.NoSuchCycle.Naming([.. cell.Motion.Cycles.Keys.Select(CyclePlan.Pointer)]));
            string? cycle = of ?? cell.Motion.Cycles.InOrder().Select(c => c.Key).FirstOrDefault();
            reading.Used("/motion/cycles", string.Join('\n', cell.Motion.Cycles.Keys));
            if (cycle is null)
            {
                reading.Missing("/motion/cycles");
                return null;
            }
            if (of is null) foreach (var (id, c) in cell.Motion.Cycles) reading.Used($"{CyclePlan.Pointer(id)}/order", c.Order);
            // What is impossible there, the motion's own findings say.
            if (ControllerSettings.Read(cell, cycle, reading, ImmutableArray.CreateBuilder<Contradiction>()) is not { } law) return null;
            var (value, name, unit) = quantity switch
            {
                SettingQuantity.PathSpeed => (law.Speed, "pathSpeed", "m/s"),
                SettingQuantity.PathAcceleration => (law.Acceleration, "pathAcceleration", "m/s²"),
                SettingQuantity.PathJerk => (law.Jerk, "pathJerk", "m/s³"),
                _ => (law.Blend, "blend", "m"),
            };
            // A trapezoid has no jerk limit, so there is nothing to type.
            if (!double.IsFinite(value)) return No(SettingReasons.NoLimit.Naming($"/motion/settings/{name}"));
            bool own = quantity == SettingQuantity.Blend && cell.Motion.Cycles[cycle].Blend is not null;
            return One(value, own ? $"{CyclePlan.Pointer(cycle)}/blend" : $"/motion/settings/{name}", unit, ToBeStated);
        }

        HeldQuantity? OfPlace()
        {
            var mapping = cell.Controller;
            switch (quantity)
            {
                case SettingQuantity.FrameTurn:
                    return One(reading.Or(mapping.FrameYaw, "/controller/frameYaw", 0), "/controller/frameYaw", "rad", ToBeStated);
                case SettingQuantity.MountHeight:
                    // The mounting plane is z = 0 of the base frame.
                    double zero = reading.Or(mapping.ZeroHeight, "/controller/zeroHeight", 0);
                    return One(0, "/controller/zeroHeight", "m", new(reading.Or(mapping.ZDown, "/controller/zDown", false), false, zero, double.NaN));
                case SettingQuantity.TcpX:
                    return One(reading.Need(cell.Tool.TcpX, "/tool/tcpX"), "/tool/tcpX", "m", ToBeStated);
                case SettingQuantity.TcpY:
                    return One(reading.Need(cell.Tool.TcpY, "/tool/tcpY"), "/tool/tcpY", "m", ToBeStated);
                default:
                    return One(reading.Need(cell.Tool.TcpZ, "/tool/tcpZ"), "/tool/tcpZ", "m", ToBeStated);
            }
        }

        HeldQuantity? OfBus()
        {
            var network = cell.Cabinet.Network;
            if (quantity == SettingQuantity.BitRate)
                return One(reading.Need(network.BitRate, "/cabinet/network/bitRate"), "/cabinet/network/bitRate", "bit/s", ToBeStated);
            if (of is null)
            {
                reading.Missing(at + "/of");
                return null;
            }
            if (quantity == SettingQuantity.Address)
            {
                if (!cell.Cabinet.Modules.TryGetValue(of, out var module)) return No(SettingReasons.NoSuchModule.Naming([.. cell.Cabinet.Modules.Keys.Select(m => $"/cabinet/modules/{m}")]));
                string address = $"/cabinet/modules/{of}/address";
                return One(reading.Need(module.Address, address, 0), address, "1", Plain);
            }
            if (!network.Messages.TryGetValue(of, out var message)) return No(SettingReasons.NoSuchMessage.Naming([.. network.Messages.Keys.Select(m => $"/cabinet/network/messages/{m}")]));
            string period = $"/cabinet/network/messages/{of}/period";
            return One(reading.Need(message.Period, period), period, "s", ToBeStated);
        }

        HeldQuantity? No(Reason reason)
        {
            wrong.Add(new(at + "/of", reason));
            return null;
        }

        HeldQuantity? Same(IEnumerable<(double Value, string Field)?> all, string unit, SettingScale usual)
        {
            (double Value, string Field)[] read = [.. all.OfType<(double, string)>()];
            if (read.Length == 0) return null;
            return read.All(r => Alike(r.Value, read[0].Value)) ? One(read[0].Value, read[0].Field, unit, usual) : No(SettingReasons.NotTheSame.Naming([.. read.Select(r => r.Field)]));
        }
    }

    private static HeldQuantity One(double value, string field, string unit, SettingScale usual) => new(_ => value, _ => field, unit, usual);

    private static bool Alike(double a, double b) => Math.Abs(a - b) <= 1e-12 * Math.Max(Math.Abs(a), Math.Abs(b)) || double.IsNaN(a) || double.IsNaN(b);

    private static (double, string) OfChain(SettingQuantity quantity, ChainDescription own, ChainReading fields)
    {
        return quantity switch
        {
            SettingQuantity.Rod => Need("rod", c => c.Rod),
            SettingQuantity.UpperArm => Need("upperArm", c => c.UpperArm),
            SettingQuantity.BaseRadius => Need("baseRadius", c => c.BaseRadius),
            SettingQuantity.BaseHeight => Need("baseHeight", c => c.BaseHeight),
            SettingQuantity.PlatformRadius => Need("platformRadius", c => c.PlatformRadius),
            SettingQuantity.PlatformHeight => Or("platformHeight", c => c.PlatformHeight),
            SettingQuantity.Inclination => Or("inclination", c => c.Inclination),
            SettingQuantity.HomeOffset => Or("homeOffset", c => c.HomeOffset),
            _ => (fields.NeedOwn("azimuth", own.Azimuth), fields.Pointer + "/azimuth"),
        };

        (double, string) Need(string name, Func<ChainDescription, double?> field) => (fields.Need(name, field), fields.PointerOf(name, field));
        (double, string) Or(string name, Func<ChainDescription, double?> field) => (fields.Or(name, field, 0), fields.PointerOf(name, field));
    }
}
