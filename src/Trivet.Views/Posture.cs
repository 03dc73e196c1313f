using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Numerics;

namespace Trivet.Views;

/// <summary>One chain as it stands, in the cell frame, metres.</summary>
/// <param name="Start">Rail: carriage joint at the start of travel. Crank: shoulder.</param>
/// <param name="End">Rail: carriage joint at the end of travel. Crank: shoulder again.</param>
/// <param name="Joint">Carriage joint or elbow now; not a number in a posture without a tool point.</param>
/// <param name="PlatformJoint">Joint on the platform now.</param>
/// <param name="Half">From the middle of the pair of rods to one of them: half the spacing along the bar.</param>
/// <param name="RodRadius">Radius of a rod.</param>
/// <param name="Beyond">The chain stands past an end of its travel.</param>
internal sealed record ChainPosture(
    string Id, RobotFamily Family, Vec3 Start, Vec3 End, Vec3 Joint, Vec3 PlatformJoint, Vec3 Half, double RodRadius, bool Beyond);

/// <summary>The robot at one tool point: where everything that moves is, for pictures. Sizes that the description leaves out are
/// drawn at a plain size; a picture is no statement.</summary>
internal sealed record Posture(ImmutableArray<ChainPosture> Chains, Vec3 Platform, Vec3 Tcp, double ToolRadius, bool Closed, bool WithinTravel)
{
    private const double UsualRodRadius = 0.006, UsualSpacing = 0.08, UsualToolRadius = 0.015;

    /// <summary>The posture with the tool centre point at p_C; null where there is no robot to draw. Closed is false when a rod does not reach.</summary>
    public static Posture? At(Assessed cell, Vec3 p_C, double rotary, double linearAxis)
    {
        var g = cell.Geometry;
        if (g.Robot is not { } robot) return null;
        double angle = double.IsFinite(rotary) ? rotary : 0, along = double.IsFinite(linearAxis) ? linearAxis : 0;
        var p_B = g.PlatformFor(p_C, angle, along);
        bool closed = true, within = true;
        var chains = ImmutableArray.CreateBuilder<ChainPosture>(robot.Chains.Length);
        for (int i = 0; i < robot.Chains.Length; i++)
        {
            var chain = robot.Chains[i];
            string id = robot.ChainIds[i];
            double q = chain.Inverse(p_B);
            closed &= double.IsFinite(q);
            bool beyond = q < chain.TravelFrom || q > chain.TravelTo;
            within &= !beyond;
            var own = cell.Cell.Robot.Chains.GetValueOrDefault(id);
            var common = cell.Cell.Robot.Common;
            double spacing = own?.RodSpacing ?? common.RodSpacing ?? UsualSpacing;
            double diameter = own?.RodDiameter ?? common.RodDiameter ?? 2 * UsualRodRadius;
            bool rail = chain.Family == RobotFamily.RailDelta;
            chains.Add(new(
                id, chain.Family,
                InCell(rail ? chain.Joint(chain.TravelFrom) : chain.Foot), InCell(rail ? chain.Joint(chain.TravelTo) : chain.Foot),
                InCell(chain.Joint(q)), InCell(p_B + chain.B), g.X_CB.R * (spacing / 2 * chain.Side), diameter / 2, beyond));
        }

        return new(chains.MoveToImmutable(), InCell(p_B), p_C, cell.Cell.Tool.Radius ?? UsualToolRadius, closed, within);

        Vec3 InCell(Vec3 v_B) => g.X_CB * v_B + along * g.LinearDirection_C;
    }

    /// <summary>
    /// The posture to draw a cell in: at the worst place of the finding marked, else above the middle of all stations, else above one
    /// of them; the first that closes. Null when none does.
    /// </summary>
    public static Posture? Representative(Assessed cell, Findings.Finding? marked)
    {
        var places = new List<(Vec3 P, double Rotary, double Linear)>();
        if (marked?.Worst is { } worst && worst.P_C.IsFinite) places.Add((worst.P_C, worst.Rotary, worst.LinearAxis));
        var above = cell.Geometry.Stations
            .Select(s => (P: s.X_CS * new Vec3((s.Low.X + s.High.X) / 2, (s.Low.Y + s.High.Y) / 2, s.High.Z), Rotary: s.RotaryFrom, Linear: s.LinearAxisAt)).ToList();
        if (above.Count > 0)
        {
            var sum = above.Aggregate(Vec3.Zero, (a, b) => a + b.P) / above.Count;
            places.Add((sum with { Z = above.Max(a => a.P.Z) }, above[0].Rotary, above[0].Linear));
            places.AddRange(above);
        }

        var postures = places.Select(p => At(cell, p.P, p.Rotary, p.Linear)).OfType<Posture>().Where(p => p.Closed).ToList();
        if (marked?.Worst is { } at && postures.Find(p => p.Tcp == at.P_C) is { } there) return there;
        return postures.Find(p => p.WithinTravel) ?? postures.FirstOrDefault();
    }
}
