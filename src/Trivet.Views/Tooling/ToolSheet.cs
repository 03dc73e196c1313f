using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Gripping;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Protecting;
using Trivet.Tooling;
using Trivet.Views.Words;

namespace Trivet.Views.Tooling;

/// <summary>Sections of the sheet.</summary>
public enum ToolSection
{
    Stack,
    Gripping,
    Air,
    Guarding,
}

/// <summary>One line of the sheet: texts for people; id, SI value and unit for programs.</summary>
/// <param name="Id">Stable, such as <c>vacuum-reached</c> or <c>air:ejector</c>.</param>
public sealed record ToolLine(ToolSection Section, string Id, string What, string Shown, double Si, string Unit);

/// <summary>One part of the stack, or a sum of it, in finished texts and in SI.</summary>
/// <param name="Pointer">Of the part; empty for a sum.</param>
/// <param name="AtTcp">Of a sum; empty for a part.</param>
public sealed record MassRow(string Pointer, string Id, string Name, string Mass, string Centre, string Inertia, string AtTcp, bool Turns, MassProperties Body, Vec3 Tcp);

/// <summary>What the tool stack, gripping, air and guarding amount to: what the desk, a command and a paper show of it.</summary>
public sealed record ToolSheet(Cell Cell, ImmutableArray<MassRow> Parts, ImmutableArray<MassRow> Sums, ImmutableArray<ToolLine> Lines)
{
    public static ToolSheet Of(Cell cell, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        var words = language.Tool;
        var stack = ToolInputs.Read(cell, new());
        ImmutableArray<MassRow> parts = [.. stack.Elements.Select(e => Row(e.Pointer, $"part:{e.Id}", cell.Tool.Parts[e.Id].Name ?? e.Id, e.Body, e.Turns, Vec3.NaN))];
        ImmutableArray<MassRow> sums = ToolSums.Of(cell, new()) is { } all && !parts.IsEmpty
            ? [.. all.Sums.Select(s => Row("", s.Part is null ? "sum" : $"sum:{s.Part}", s.Part is null ? words.Empty : Locale.Fill(words.With, ("part", cell.Brief.Parts[s.Part].Name ?? s.Part)), s.Body, false, s.Tcp))]
            : [];
        var lines = new List<ToolLine>();
        var cycles = TimedCycle.Of(cell);
        Grip(cell, words, lines, locale);
        AirLines(cell, cycles, words, lines, locale);
        Guard(cell, cycles, words, lines, locale);
        return new(cell, parts, sums, [.. lines]);

        MassRow Row(string pointer, string id, string name, MassProperties body, bool turns, Vec3 tcp)
        {
            return new(pointer, id, name, Shown(body.Mass, "kg"), Three(body.Centre, "m"), body.InertiaKnown ? Three(Diagonal(body.About(Vec3.Zero)), "kg m²") : words.Unknown,
                !tcp.IsFinite ? "" : body.InertiaKnown ? Three(Diagonal(body.About(tcp)), "kg m²") : words.Unknown, turns, body, tcp);
        }

        string Shown(double si, string unit) => Numbers.Quantity(si, unit, locale);

        string Three(Vec3 v, string unit)
        {
            var display = DisplayUnit.Of(unit);
            return string.Join(", ", new[] { v.X, v.Y, v.Z }.Select(x => Numbers.Plain(x * display.PerSi, display.Decimals, locale))) + " " + display.Symbol;
        }
    }

    private static Vec3 Diagonal(Mat3 m) => new(m.Row0.X, m.Row1.Y, m.Row2.Z);

    private static void Grip(Cell cell, ToolWords words, List<ToolLine> lines, Locale? locale)
    {
        if (!GripInputs.HasVacuum(cell, new())) return;
        string? part = cell.Motion.Cycles.InOrder().Select(c => c.Value.Part).FirstOrDefault(p => p is not null && cell.Brief.Parts.ContainsKey(p));
        if (part is not null && GripInputs.Cups(cell, part, new()).Grip is { } cups)
        {
            Add("cups-force", words.CupsForce, cups.Force, "N");
            Add("cups-lever", words.CupsLever, cups.Lever, "m");
            lines.Add(new(ToolSection.Gripping, "friction-smallest", words.Friction, $"{Numbers.Plain(cups.Friction.Lower, 2, locale)} … {Numbers.Plain(cups.Friction.Upper, 2, locale)}", cups.Friction.Lower, "1"));
        }
        if (GripInputs.Flow(cell, new()).Grip is not { } flow) return;
        var evacuation = Evacuation.Of(flow);
        lines.Add(new(ToolSection.Gripping, "volume", words.Evacuated, $"{Numbers.Plain(1e6 * flow.Volume, 1, locale)} cm³", flow.Volume, "m³"));
        Add("vacuum-reached", words.Reached, evacuation.Reached, "Pa");
        Add("until-held", words.UntilHeld, evacuation.UntilHeld, "s");
        if (double.IsFinite(evacuation.UntilFree)) Add("until-free", words.UntilFree, evacuation.UntilFree, "s");

        void Add(string id, string what, double si, string unit) => lines.Add(new(ToolSection.Gripping, id, what, Numbers.Quantity(si, unit, locale), si, unit));
    }

    private static void AirLines(Cell cell, ImmutableArray<TimedCycle> cycles, ToolWords words, List<ToolLine> lines, Locale? locale)
    {
        if (cell.Pneumatics.Users.IsEmpty) return;
        var use = AirUse.Of(cell, cycles, new());
        foreach (var share in use.Shares) Volume($"air:{share.User}", Locale.Fill(words.AirOf, ("user", cell.Pneumatics.Users[share.User].Name ?? share.User)), share.Volume);
        Volume("air-cycle", words.AirCycle, use.PerCycle);
        if (cell.Brief.MeanRate is not { } rate) return;
        double flow = use.PerCycle * rate;
        // An hour's volume says more than its mean flow to who pays for it; both are the same number.
        lines.Add(new(ToolSection.Air, "air-flow", words.AirHour, $"{Numbers.Quantity(flow, "m³/s", locale)}, {Numbers.Plain(3600 * flow, 2, locale)} m³/h", flow, "m³/s"));

        void Volume(string id, string what, double si) => lines.Add(new(ToolSection.Air, id, what, double.IsFinite(si) ? $"{Numbers.Plain(1000 * si, 3, locale)} l" : words.Unknown, si, "m³"));
    }

    private static void Guard(Cell cell, ImmutableArray<TimedCycle> cycles, ToolWords words, List<ToolLine> lines, Locale? locale)
    {
        if (MaximumSpace.Of(cell, new()) is { } space)
        {
            foreach (var (id, what, u) in new[] { ("x", words.SpaceX, Vec3.UnitX), ("y", words.SpaceY, Vec3.UnitY), ("z", words.SpaceZ, Vec3.UnitZ) })
            {
                double from = -space.Support(-u), to = space.Support(u);
                string shown = $"{Numbers.Quantity(from, "m", locale)} … {Numbers.Quantity(to, "m", locale)}";
                lines.Add(new(ToolSection.Guarding, $"space-{id}-from", what, shown, from, "m"));
                lines.Add(new(ToolSection.Guarding, $"space-{id}-to", "", "", to, "m"));
            }
        }
        foreach (var cycle in cycles)
        {
            foreach (var t in Protecting.Thrown.Of(cell, cycle))
            {
                var d = t.Direction_C;
                string what = t.What == "part" ? words.ThrownPart : Locale.Fill(words.ThrownRod, ("chain", t.What));
                string shown = Locale.Fill(
                    words.ThrownValue, ("speed", $"{Numbers.Plain(t.Speed, 2, locale)} m/s"), ("energy", $"{Numbers.Plain(t.Energy, 3, locale)} J"), ("azimuth", Numbers.Quantity(Math.Atan2(d.Y, d.X), "rad", locale)),
                    ("elevation", Numbers.Quantity(Math.Asin(Math.Clamp(d.Z, -1, 1)), "rad", locale)), ("range", Numbers.Quantity(t.Range, "m", locale)));
                lines.Add(new(
                    ToolSection.Guarding, $"thrown:{cycle.Id}:{t.What}", Locale.Fill(words.Thrown, ("what", what), ("cycle", cell.Motion.Cycles[cycle.Id].Name ?? cycle.Id)), shown, t.Energy, "J"));
            }
        }
    }
}
