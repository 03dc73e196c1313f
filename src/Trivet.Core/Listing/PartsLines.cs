using System.Collections.Immutable;
using Trivet.Adapters;
using Trivet.Bolting;
using Trivet.Cells;
using Trivet.Frames;

namespace Trivet.Listing;

/// <summary>Groups of the parts list, in its order.</summary>
public enum PartGroup
{
    Robot,
    Drives,
    Tool,
    Air,
    Frame,
    Guarding,
    Cabinet,
    Cables,
    Screws,
    Further,
}

/// <summary>What a line is, where the description gives it no name of its own.</summary>
public enum PartKind
{
    Named,
    Platform,
    Rod,
    Carriage,
    Arm,
    Counterweight,
    RotaryAxis,
    LinearAxis,
    Motor,
    Valve,
    Hose,
    Member,
    Guard,
    Foot,
    /// <summary>Its size is the length that is clamped and engaged; the screw is the next longer one of its standard.</summary>
    Screw,
    /// <summary>Its sizes are diameter and length.</summary>
    Pin,
    /// <summary>Two at each joint of members that are screwed together, one on either side.</summary>
    Bracket,
}

/// <summary>One line of the parts list.</summary>
/// <param name="Pointers">The parts of the description it stands for; for a line of its own that of the line.</param>
/// <param name="Name">As stated; empty where the kind says it.</param>
/// <param name="Sizes">Lengths that tell it from others of its kind, metres, in the order people say them.</param>
/// <param name="Supplied">As stated, or usual for its kind; null where neither says it.</param>
/// <param name="Stated">The supply is stated, not the usual one.</param>
public sealed record PartsLine(
    PartGroup Group, PartKind Kind, ImmutableArray<string> Pointers, string Name, ImmutableArray<double> Sizes, int Quantity, Supplied? Supplied, bool Stated, int Spares)
{
    public string Article { get; init; } = "";
    public string Note { get; init; } = "";
}

/// <summary>
/// Everything a cell consists of, as far as it is described, with quantities. Equal things are one line. Usual, where nothing is stated: made are platform, plates,
/// fingers and cut profiles, all else is bought; spares are one pair of rods, and as many cups as are fitted (common practice, no source).
/// </summary>
/// <param name="Astray">Lines of /partsList and parts of the stack that speak of something the description does not have, by their pointers.</param>
public sealed record PartsLines(ImmutableArray<PartsLine> Lines, ImmutableArray<string> Astray)
{
    /// <summary>An end this near to the floor stands on a foot, metres.</summary>
    private const double OnFloor = 0.001;

    /// <summary>A bracket on either side of a joint; common practice, no source. Another number is said of /frame/joints in the list.</summary>
    private const int BracketsAtJoint = 2;

    public static PartsLines Of(Cell cell) => Of(cell, new());

    /// <param name="plates">Those of this cell.</param>
    public static PartsLines Of(Cell cell, FoundPlates plates)
    {
        var lines = new List<PartsLine>();
        Robot(cell, lines);
        Drives(cell, lines);
        Tool(cell, plates, lines);
        Plates(cell, plates, lines);
        Air(cell, lines);
        Frame(cell, lines);
        foreach (var (id, d) in cell.Guarding.Devices.InOrder()) lines.Add(Bought(PartGroup.Guarding, $"/guarding/devices/{id}", d.Name ?? id));
        foreach (var (id, f) in cell.Guarding.Fences.InOrder())
        {
            double dx = (f.ToX - f.FromX) ?? double.NaN, dy = (f.ToY - f.FromY) ?? double.NaN, length = Math.Sqrt(dx * dx + dy * dy);
            lines.Add(Bought(PartGroup.Guarding, $"/guarding/fences/{id}", f.Name ?? "", PartKind.Guard) with { Sizes = Known(length, f.Height ?? double.NaN) });
        }
        foreach (var (id, m) in cell.Cabinet.Modules.InOrder()) lines.Add(Bought(PartGroup.Cabinet, $"/cabinet/modules/{id}", m.Name ?? id));
        Screws(cell, plates, lines);
        Pins(cell, plates, lines);
        foreach (var (id, c) in cell.Cables.InOrder()) lines.Add(Bought(PartGroup.Cables, $"/cables/{id}", c.Name ?? id) with { Sizes = Known(c.Length ?? double.NaN) });
        var astray = ImmutableArray.CreateBuilder<string>();
        foreach (var (id, part) in cell.Tool.Parts.InOrder())
            if (part.Plate is { } plate && !cell.Plates.ContainsKey(plate)) astray.Add($"/tool/parts/{id}/plate");
        foreach (var (id, said) in cell.PartsList.InOrder()) Say(id, said, lines, astray);
        return new([.. lines.OrderBy(l => l.Group)], astray.ToImmutable());
    }

    private static void Robot(Cell cell, List<PartsLine> lines)
    {
        var robot = cell.Robot;
        if (robot.PlatformMass is not null || robot.Chains.Count > 0) lines.Add(Made(PartGroup.Robot, PartKind.Platform, "/robot/platformMass"));
        Each(PartKind.Rod, 2, c => c.Rod, spares: 2);
        if (robot.Family == RobotFamily.CrankDelta) Each(PartKind.Arm, 1, c => c.UpperArm);
        else Each(PartKind.Carriage, 1, _ => null);
        foreach (var (id, chain) in robot.Chains.InOrder().Where(c => (c.Value.Counterweight ?? robot.Common.Counterweight) > 0).Take(1))
            lines.Add(new(PartGroup.Robot, PartKind.Counterweight, [$"/robot/chains/{id}"], "", [], robot.Chains.Count, Cells.Supplied.Made, false, 0));
        if (robot.Rotary.Fitted == true && cell.Tool.Parts.Values.All(p => p.Kind != ToolPartKind.RotaryAxis)) lines.Add(Bought(PartGroup.Robot, "/robot/rotary", "", PartKind.RotaryAxis));
        if (robot.LinearAxis.Fitted == true) lines.Add(Bought(PartGroup.Robot, "/robot/linearAxis", "", PartKind.LinearAxis));

        // Chains that differ in the size that is cut or bought are lines of their own.
        void Each(PartKind kind, int each, Func<ChainDescription, double?> size, int spares = 0)
        {
            foreach (var same in robot.Chains.InOrder().GroupBy(c => size(c.Value) ?? size(robot.Common)))
                lines.Add(new(PartGroup.Robot, kind, [.. same.Select(c => $"/robot/chains/{c.Key}")], "", Known(same.Key ?? double.NaN), each * same.Count(), Cells.Supplied.Bought, false, spares));
        }
    }

    private static void Drives(Cell cell, List<PartsLine> lines)
    {
        foreach (var (id, motor) in cell.Drives.Motors.InOrder())
        {
            IEnumerable<string> axes = [.. cell.Robot.Chains.Keys, .. cell.Drives.Axes.Keys.Where(a => a is "rotary" or "linear")];
            int used = axes.Count(a => (cell.Drives.Axes.GetValueOrDefault(a)?.Motor ?? (cell.Robot.Chains.ContainsKey(a) ? cell.Drives.Common.Motor : null)) == id);
            lines.Add(Bought(PartGroup.Drives, $"/drives/motors/{id}", motor.Name ?? id, PartKind.Motor) with { Quantity = used });
        }
    }

    private static void Tool(Cell cell, FoundPlates plates, List<PartsLine> lines)
    {
        bool oneCup = cell.Tool.Parts.Values.Count(p => p.Kind == ToolPartKind.Cup) == 1;
        foreach (var (id, part) in cell.Tool.Parts.InOrder())
        {
            int count = part.Kind == ToolPartKind.Cup && oneCup ? Math.Max(1, cell.Tool.Vacuum.Cups ?? 1)
                : part.Plate is { } plate && cell.Plates.ContainsKey(plate) ? Pieces(cell, plate, plates) : 1;
            var supplied = part.Kind switch
            {
                ToolPartKind.Plate or ToolPartKind.Finger => Cells.Supplied.Made,
                ToolPartKind.RotaryAxis or ToolPartKind.Gripper or ToolPartKind.Cup => Cells.Supplied.Bought,
                _ => (Supplied?)null,
            };
            lines.Add(new(PartGroup.Tool, PartKind.Named, [$"/tool/parts/{id}"], part.Name ?? id, [], count, supplied, false, part.Kind == ToolPartKind.Cup ? count : 0));
        }
    }

    /// <summary>The plates that are designed, each with its pieces, where no part of the stack says that it is this plate.</summary>
    private static void Plates(Cell cell, FoundPlates plates, List<PartsLine> lines)
    {
        foreach (var (id, plate) in cell.Plates.InOrder())
        {
            if (cell.Tool.Parts.Values.Any(p => p.Plate == id)) continue;
            lines.Add(new(PartGroup.Tool, PartKind.Named, [AdapterInput.Pointer(id)], plate.Name ?? id, [], Pieces(cell, id, plates), Cells.Supplied.Made, false, 0));
        }
    }

    private static int Pieces(Cell cell, string id, FoundPlates plates) =>
        AdapterInput.Read(cell, id, new(), []) is { } input ? plates.Pieces(input) : Math.Max(1, cell.Plates[id].Pieces ?? 1);

    private static void Air(Cell cell, List<PartsLine> lines)
    {
        var air = cell.Pneumatics;
        foreach (var (id, user) in air.Users.InOrder()) lines.Add(Bought(PartGroup.Air, $"/pneumatics/users/{id}", user.Name ?? id));
        foreach (var valve in air.Users.InOrder().Where(u => !string.IsNullOrWhiteSpace(u.Value.Valve)).GroupBy(u => u.Value.Valve!))
            lines.Add(Bought(PartGroup.Air, $"/pneumatics/users/{valve.First().Key}/valve", valve.Key, PartKind.Valve));
        foreach (var same in air.Hoses.InOrder().GroupBy(h => (h.Value.InnerDiameter, h.Value.Length)))
        {
            lines.Add(new(
                PartGroup.Air, PartKind.Hose, [.. same.Select(h => $"/pneumatics/hoses/{h.Key}")], same.Count() == 1 ? same.First().Value.Name ?? "" : "",
                Known(same.Key.InnerDiameter ?? double.NaN, same.Key.Length ?? double.NaN), same.Count(), Cells.Supplied.Bought, false, 0));
        }
    }

    private static void Frame(Cell cell, List<PartsLine> lines)
    {
        var bars = FrameMembers.Of(cell.Frame, new());
        // To the tenth of a millimetre they are one cut.
        foreach (var same in bars.GroupBy(b => (b.Profile, Round(b.Width), Round(b.Height), Round(b.Length))))
        {
            string name = same.Key.Profile is { } id ? cell.Frame.Profiles.GetValueOrDefault(id)?.Name ?? id : "";
            lines.Add(new(
                PartGroup.Frame, PartKind.Member, [.. same.Select(m => m.Pointer).Distinct()], name, Known(same.First().Width, same.First().Height, same.First().Length), same.Count(),
                Cells.Supplied.Made, false, 0));
        }
        int joints = cell.Frame.Joints.Rigid == true ? 0 : JointsOf(bars);
        if (joints > 0) lines.Add(new(PartGroup.Frame, PartKind.Bracket, ["/frame/joints"], "", [], BracketsAtJoint * joints, Cells.Supplied.Bought, false, 0));
        int feet = bars.SelectMany(b => new[] { b.From, b.To }).Where(p => p.IsFinite && Math.Abs(p.Z) < OnFloor).Distinct().Count();
        if (feet > 0) lines.Add(new(PartGroup.Frame, PartKind.Foot, ["/frame/feet"], "", [], feet, Cells.Supplied.Bought, false, 0));

        static double Round(double metres) => Math.Round(metres, 4);
    }

    /// <summary>Ends of members that meet another, each joint once.</summary>
    private static int JointsOf(ImmutableArray<FrameBar> bars)
    {
        int joints = 0;
        for (int i = 0; i < bars.Length; i++)
        {
            if (!bars[i].IsPlaced) continue;
            foreach (var p in new[] { bars[i].From, bars[i].To })
            {
                if (FrameInputs.IsFoot(p)) continue;
                for (int j = 0; j < bars.Length; j++)
                {
                    if (j == i || !bars[j].IsPlaced) continue;
                    var (along, distance) = FrameInputs.Distance(bars[j], p);
                    if (distance > Reach(bars[i]) + Reach(bars[j]) + OnFloor) continue;
                    // Where two ends meet, that of the later member counts.
                    bool within = along > OnFloor && along < bars[j].Length - OnFloor;
                    if (!within && j > i) continue;
                    joints++;
                    break;
                }
            }
        }
        return joints;

        static double Reach(FrameBar bar) => double.IsFinite(bar.Width) && double.IsFinite(bar.Height) ? Math.Max(bar.Width, bar.Height) / 2 : 0;
    }

    /// <summary>Pins of the plates, by size.</summary>
    private static void Pins(Cell cell, FoundPlates plates, List<PartsLine> lines)
    {
        foreach (var (id, plate) in cell.Plates.InOrder())
        {
            if (AdapterInput.Read(cell, id, new(), []) is not { } input) continue;
            foreach (var pin in PlatePins.Of(plates.Chosen(input)))
                lines.Add(new(PartGroup.Screws, PartKind.Pin, [$"{AdapterInput.Pointer(id)}/pins"], plate.Name ?? id, [pin.Diameter, pin.Length], pin.Count, Cells.Supplied.Bought, false, 0));
        }
    }

    /// <summary>
    /// The screws of the joints: one line for each joint, since each has its own torque. Those of an adapter plate are counted from the pattern they go
    /// through, without designing the plate anew: their length is on the plate's drawing.
    /// </summary>
    private static void Screws(Cell cell, FoundPlates plates, List<PartsLine> lines)
    {
        foreach (var (id, joint) in cell.Joints.InOrder())
        {
            if (joint.Plate is { } plate && joint.Side != JointSide.Between && cell.Plates.TryGetValue(plate, out var plan))
            {
                string? face = joint.Side == JointSide.Below ? plan.Below : plan.Above;
                if (BoltPattern.Read(cell, face, $"/plates/{plate}/{(joint.Side == JointSide.Below ? "below" : "above")}", new(), []) is { } pattern)
                    Add(id, joint, joint.Thread ?? pattern.Thread?.Name, joint.PropertyClass, pattern.Points.Length, []);
            }
            else if (JointInputs.Read(cell, id, plates, new(), []) is { } read) Add(id, joint, read.Thread.Name, read.Class.Name, read.Points.Length, Known(read.ClampLength + read.Engagement));
        }

        void Add(string id, Joint joint, string? thread, string? strength, int count, ImmutableArray<double> sizes)
        {
            string what = string.Join(", ", new[] { thread, strength }.Where(w => w is not null));
            lines.Add(new(PartGroup.Screws, PartKind.Screw, [JointInputs.Pointer(id)], $"{what}: {joint.Name ?? id}", sizes, count, Cells.Supplied.Bought, false, 0));
        }
    }

    private static void Say(string id, ListedPart said, List<PartsLine> lines, ImmutableArray<string>.Builder astray)
    {
        string own = $"/partsList/{id}";
        if (string.IsNullOrWhiteSpace(said.Of))
        {
            lines.Add(new(PartGroup.Further, PartKind.Named, [own], said.Name ?? id, [], said.Quantity ?? 1, said.Supplied, said.Supplied is not null, said.Spares ?? 0)
            {
                Article = said.Article ?? "", Note = said.Note ?? "",
            });
            return;
        }

        int at = lines.FindIndex(l => l.Pointers.Contains(said.Of));
        if (at < 0)
        {
            astray.Add(own + "/of");
            return;
        }
        var line = lines[at];
        lines[at] = line with
        {
            Name = said.Name ?? line.Name,
            Quantity = said.Quantity ?? line.Quantity,
            Supplied = said.Supplied ?? line.Supplied,
            Stated = said.Supplied is not null || line.Stated,
            Spares = said.Spares ?? line.Spares,
            Article = said.Article ?? line.Article,
            Note = said.Note ?? line.Note,
        };
    }

    private static PartsLine Bought(PartGroup group, string pointer, string name, PartKind kind = PartKind.Named) =>
        new(group, kind, [pointer], name, [], 1, Cells.Supplied.Bought, false, 0);

    private static PartsLine Made(PartGroup group, PartKind kind, string pointer) => new(group, kind, [pointer], "", [], 1, Cells.Supplied.Made, false, 0);

    private static ImmutableArray<double> Known(params ReadOnlySpan<double> sizes)
    {
        var known = ImmutableArray.CreateBuilder<double>();
        foreach (double size in sizes)
            if (double.IsFinite(size)) known.Add(size);
        return known.ToImmutable();
    }
}
