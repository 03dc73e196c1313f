using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Tooling;

namespace Trivet.Views.Pictures;

/// <summary>The solids of the robot with what is on it: base, rails, carriages or arms, motors, switches, rods, platform, tool.</summary>
internal sealed class RobotSolids(Assessed assessed, Fitted fitted, ImmutableArray<Piece>.Builder pieces)
{
    // Sizes of what the description does not size, for the picture alone, metres.
    private const double BaseThickness = 0.012, RailWidth = 0.034, RailDepth = 0.022, CarriageHalf = 0.036, CarriageDepth = 0.026;
    private const double ArmWidth = 0.026, ShoulderRadius = 0.034, MotorHalf = 0.03, DeviceHalf = 0.018, SwitchHalf = 0.014, PlateThickness = 0.012, Beyond = 0.03;

    private readonly Cell _cell = assessed.Cell;

    public void Add()
    {
        double along = Scene.AlongAxis(assessed);
        var posture = Posture.Representative(assessed, null) ?? Posture.At(assessed, Vec3.NaN, 0, along);
        if (fitted.HasFlag(Fitted.Robot)) LinearAxis();
        if (posture is null)
        {
            if (fitted.HasFlag(Fitted.Robot)) Devices(null);
            return;
        }

        if (fitted.HasFlag(Fitted.Robot))
        {
            Base(posture);
            foreach (var chain in posture.Chains) Chain(chain);
            Devices(posture);
        }

        if (!posture.Closed) return;
        foreach (var chain in posture.Chains)
        {
            string at = At(chain);
            double bar = 1.2 * chain.RodRadius;
            if (fitted.HasFlag(Fitted.Rods))
            {
                foreach (int side in (ReadOnlySpan<int>)[-1, 1])
                    Put(ConvexSolid.Cylinder(chain.Joint + side * chain.Half, chain.PlatformJoint + side * chain.Half, chain.RodRadius, 10), at, at + "/rod");
                Put(ConvexSolid.Cylinder(chain.Joint - 1.08 * chain.Half, chain.Joint + 1.08 * chain.Half, bar, 10), at, at + "/rod");
            }

            if (fitted.HasFlag(Fitted.Rods) || fitted.HasFlag(Fitted.Platform))
                Put(ConvexSolid.Cylinder(chain.PlatformJoint - 1.08 * chain.Half, chain.PlatformJoint + 1.08 * chain.Half, bar, 10), fitted.HasFlag(Fitted.Rods) ? at : "/robot/platform", at + "/rod");
        }

        if (fitted.HasFlag(Fitted.Platform)) Platform(posture);
        if (fitted.HasFlag(Fitted.Tool)) Tool(posture);
    }

    private static string At(ChainPosture chain) => "/robot/chains/" + chain.Id;

    private Vec3 Down => -assessed.Geometry.X_CB.R.Column(2);

    private Vec3 Origin => assessed.Geometry.X_CB.P + Scene.AlongAxis(assessed) * assessed.Geometry.LinearDirection_C;

    private void Put(ConvexSolid solid, params ReadOnlySpan<string> pointers) => pieces.Add(new(solid, [.. pointers]));

    /// <summary>Away from the robot's middle, across a chain's rail.</summary>
    private Vec3 Outward(ChainPosture chain, Vec3 along)
    {
        var out_C = chain.Start - Origin;
        out_C -= out_C.Dot(along) * along;
        if (out_C.Norm < 1e-6) out_C = chain.Half.Cross(along);
        return out_C.Unit();
    }

    /// <summary>The plate the robot is bolted on by.</summary>
    private void Base(Posture posture)
    {
        var (x, y, top) = (assessed.Geometry.X_CB.R.Column(0), assessed.Geometry.X_CB.R.Column(1), Origin);
        if (!top.IsFinite) return;
        var corners = posture.Chains.SelectMany(c =>
        {
            var r = c.Start - top;
            double u = r.Dot(x), v = r.Dot(y), size = Math.Sqrt(u * u + v * v);
            if (size < 0.02) return [];
            // A flat corner over each chain, as wide as what hangs there.
            double far = 1 + 0.05 / size, across = c.Half.Norm + 0.02;
            return ((double, double)[])[(u * far - v / size * across, v * far + u / size * across), (u * far + v / size * across, v * far - u / size * across)];
        });
        var rim = Hull.Of(corners);
        if (rim.Length >= 3) Put(ConvexSolid.Prism([.. rim.Select(q => top + q.X * x + q.Y * y + BaseThickness * Down)], -BaseThickness * Down, _ => false), "/robot", "/mount");
    }

    private void Chain(ChainPosture chain)
    {
        string at = At(chain);
        if (chain.Family == RobotFamily.CrankDelta)
        {
            Put(ConvexSolid.Cylinder(chain.Start - 0.9 * chain.Half, chain.Start + 0.9 * chain.Half, ShoulderRadius, 20), at, at + "/drive", "/drives/axes/" + chain.Id);
            // The shoulder hangs from the base.
            double drop = (chain.Start - Origin).Dot(Down);
            if (drop > ShoulderRadius) Put(ConvexSolid.Of(Bar.Between(at, chain.Start, chain.Start - drop * Down, 0.03, 0.05)), at, at + "/drive");
            if (chain.Joint.IsFinite) Put(ConvexSolid.Of(Bar.Between(at, chain.Start, chain.Joint, ArmWidth, ArmWidth)), at, at + "/arm");
            return;
        }

        var along = (chain.End - chain.Start).Unit();
        var outward = Outward(chain, along);
        var side = along.Cross(outward);
        // The rail stands behind its carriage and reaches up to the base.
        double up = Math.Max(Beyond, along.Dot(Down) > 0.3 ? (chain.Start - Origin).Dot(Down) / along.Dot(Down) : 0);
        Vec3 from = chain.Start - up * along, to = chain.End + Beyond * along, behind = (CarriageDepth + RailDepth / 2) * outward;
        Put(ConvexSolid.Box(0.5 * (from + to) + behind, 0.5 * (to - from), RailWidth / 2 * side, RailDepth / 2 * outward), at, at + "/rail");
        var joint = chain.Joint.IsFinite ? chain.Joint : chain.Start;
        double half = Math.Max(CarriageHalf * 0.8, chain.Half.Norm - 0.008);
        Put(ConvexSolid.Box(joint + CarriageDepth / 2 * outward, CarriageHalf * along, half * side, CarriageDepth / 2 * outward), at, at + "/carriage");
    }

    private void LinearAxis()
    {
        var (axis, g) = (_cell.Robot.LinearAxis, assessed.Geometry);
        if (axis.Fitted != true || g.LinearDirection_C.Norm < 0.5 || axis is not { TravelFrom: { } from, TravelTo: { } to } || !g.X_CB.P.IsFinite) return;
        var up = 0.03 * Vec3.UnitZ;
        Put(ConvexSolid.Of(Bar.Between("", g.X_CB.P + (from - 0.15) * g.LinearDirection_C + up, g.X_CB.P + (to + 0.15) * g.LinearDirection_C + up, 0.08, 0.06)), "/robot/linearAxis");
    }

    /// <summary>Motors and other devices where cables lead to, and the travel switches on their rails.</summary>
    private void Devices(Posture? posture)
    {
        var drawn = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (id, stop) in _cell.Io.Switches.InOrder())
        {
            string at = "/io/switches/" + id;
            string? device = stop.Signal is { } signal ? _cell.Io.Signals.GetValueOrDefault(signal)?.Device : null;
            if (posture?.Chains.FirstOrDefault(c => c.Id == stop.Axis && c.Family == RobotFamily.RailDelta) is not { } chain || stop.At is not { } place) continue;
            var along = (chain.End - chain.Start).Unit();
            var outward = Outward(chain, along);
            var side = along.Cross(outward);
            var own = _cell.Robot.Chains.GetValueOrDefault(chain.Id);
            double q = place - (own?.TravelFrom ?? _cell.Robot.Common.TravelFrom ?? 0);
            var p = chain.Start + q * along + (CarriageDepth + RailDepth / 2) * outward + (RailWidth / 2 + SwitchHalf) * side;
            string[] pointers = device is null ? [at] : [at, "/cabling/devices/" + device];
            Put(ConvexSolid.Box(p, 1.6 * SwitchHalf * along, SwitchHalf * side, SwitchHalf * outward), pointers);
            if (device is not null) drawn.Add(device);
        }

        foreach (var (id, device) in _cell.Cabling.Devices.InOrder())
        {
            if (drawn.Contains(id) || device is not { X: { } x, Y: { } y, Z: { } z } || device.MovesWith == Carrier.Platform) continue;
            var cable = _cell.Cables.Values.FirstOrDefault(c => c.Kind == CableKind.Motor && (c.To == id || c.From == id));
            string at = "/cabling/devices/" + id;
            var p = new Vec3(x, y, z);
            if (cable?.Axis is { } axis && posture?.Chains.FirstOrDefault(c => c.Id == axis) is { } chain)
            {
                // A motor sits behind its rail's head, or by its shoulder where it is stated.
                var along = chain.Family == RobotFamily.RailDelta ? (chain.End - chain.Start).Unit() : Down;
                var outward = Outward(chain, along);
                var from = p + (chain.Family == RobotFamily.RailDelta ? CarriageDepth + RailDepth : -0.055) * outward;
                Put(ConvexSolid.Box(from + 0.055 * outward, 0.055 * outward, MotorHalf * along.Cross(outward), MotorHalf * along), at, At(chain), At(chain) + "/motor", "/drives/axes/" + axis);
            }
            else Put(ConvexSolid.Upright(p - DeviceHalf * new Vec3(1, 1, 1), p + DeviceHalf * new Vec3(1, 1, 1)), at);
        }
    }

    private void Platform(Posture posture)
    {
        var r = assessed.Geometry.X_CB.R;
        var rim = Hull.Of(posture.Chains.SelectMany(c => (Vec3[])[c.PlatformJoint + c.Half, c.PlatformJoint - c.Half])
            .Select(p => (r.Column(0).Dot(p - posture.Platform), r.Column(1).Dot(p - posture.Platform))));
        double height = posture.Chains.Average(c => (c.PlatformJoint - posture.Platform).Dot(r.Column(2)));
        if (rim.Length < 3) rim = [(-0.05, -0.03), (0.05, -0.03), (0.05, 0.03), (-0.05, 0.03)];
        Put(ConvexSolid.Prism([.. rim.Select(q => posture.Platform + q.X * r.Column(0) + q.Y * r.Column(1) + (height - PlateThickness / 2) * r.Column(2))], PlateThickness * r.Column(2), _ => false),
            "/robot", "/robot/platform");
    }

    private void Tool(Posture posture)
    {
        var r = assessed.Geometry.X_CB.R;
        var elements = ToolInputs.Read(_cell, new()).Elements;
        if (elements.IsEmpty)
        {
            if ((posture.Tcp - posture.Platform).Norm > 1e-3) Put(ConvexSolid.Cylinder(posture.Platform, posture.Tcp, posture.ToolRadius, 20), "/tool", "/robot/rotary");
            return;
        }

        foreach (var e in elements)
        {
            var part = _cell.Tool.Parts[e.Id];
            double height = Math.Max(e.Height, 0.002), width = part.Width ?? part.Diameter ?? 0.03;
            var top = posture.Platform + r * new Vec3(e.Body.Centre.X, e.Body.Centre.Y, e.Top);
            if (!top.IsFinite) continue;
            bool box = part.Shape == SolidKind.Box || part.Shape is null && part.Width is not null;
            var solid = box
                ? ConvexSolid.Box(top - height / 2 * r.Column(2), width / 2 * r.Column(0), (part.Depth ?? width) / 2 * r.Column(1), height / 2 * r.Column(2))
                : ConvexSolid.Cylinder(top, top - height * r.Column(2), width / 2, 20);
            string at = e.Pointer;
            if (e.Kind == ToolPartKind.RotaryAxis) Put(solid, at, "/tool", "/robot/rotary");
            else Put(solid, at, "/tool");
        }
    }
}
