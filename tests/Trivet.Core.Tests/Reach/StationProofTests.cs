using System.Collections.Immutable;
using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Reach;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Reach;

/// <summary>
/// Bounds against sampling: whatever is attained anywhere in a station's volume lies on the good side of the bound. The sampled
/// quantities are formed apart from the bounds: triangles for the use of reach, the library's singular values for dexterity, the
/// distances of bodies placed pose by pose for clearance.
/// </summary>
public sealed class StationProofTests
{
    private const int Points = 40;

    /// <summary>The small cells with every chain made different, the mount turned and tilted, the tool aside and the stations moved.</summary>
    private static readonly Gen<Cell> Unsymmetrical =
        from cell in Gen.Bool.Select(b => b ? ReachCells.Rail : ReachCells.Crank)
        from chains in Gen.Double[-1, 1].Array[9].Array[3]
        from mount in Gen.Double[-1, 1].Array[6]
        from tool in Gen.Double[-1, 1].Array[3]
        from station in Gen.Double[-1, 1].Array[7]
        select Moved(cell, chains, mount, tool, station);

    private static Cell Moved(Cell cell, double[][] chains, double[] mount, double[] tool, double[] station)
    {
        var common = cell.Robot.Common;
        bool rail = cell.Robot.Family == RobotFamily.RailDelta;
        var moved = cell.Robot.Chains.Select((c, i) => KeyValuePair.Create(c.Key, c.Value with
        {
            Azimuth = c.Value.Azimuth + 0.1 * chains[i][0],
            BaseRadius = common.BaseRadius + 0.02 * chains[i][1],
            BaseSideOffset = 0.01 * chains[i][2],
            Inclination = rail ? 0.2 * chains[i][3] : null,
            SideLean = 0.1 * chains[i][4],
            UpperArm = rail ? null : common.UpperArm + 0.02 * chains[i][3],
            Rod = common.Rod + 0.02 * chains[i][5],
            PlatformRadius = common.PlatformRadius + 0.01 * chains[i][6],
            PlatformHeight = 0.01 * chains[i][7],
            HomeOffset = 0.02 * chains[i][8],
        }));
        return cell with
        {
            Robot = cell.Robot with { Chains = Keyed.Empty<ChainDescription>().AddRange(moved) },
            Mount = new()
            {
                X = 0.02 * mount[0], Y = 0.02 * mount[1], Z = 1.6 + 0.02 * mount[2], Yaw = Math.PI * mount[3], TiltX = 0.05 * mount[4], TiltY = 0.05 * mount[5],
            },
            Tool = cell.Tool with { TcpX = 0.03 * tool[0], TcpY = 0.03 * tool[1], TcpZ = -0.15 + 0.02 * tool[2] },
            Stations = Keyed.Empty<Station>().Add("nest", new()
            {
                Kind = StationKind.Nest, X = 0.05 * station[0], Y = 0.05 * station[1], Z = 0.82 + 0.03 * station[2], Yaw = Math.PI * station[3],
                Width = 0.08 + 0.07 * station[4], Depth = 0.08 + 0.07 * station[5], Approach = 0.05, RotaryFrom = station[6] - 0.5, RotaryTo = station[6] + 0.5,
                WallHeight = 0.02, WallGap = 0.04,
            }),
        };
    }

    [Fact]
    public void No_sampled_value_lies_beyond_a_bound() => Gen.Select(Unsymmetrical, Gen.Double[0, 1].Array[4 * Points]).Sample((cell, place) =>
    {
        var measured = new Poses(cell, CellGeometry.Of(cell));
        var findings = StationStage.Of(cell).Tasks.SelectMany(t => t.Prove(TestContext.Current.CancellationToken)).OfType<Judged>()
            .Where(f => f.Assurance == Assurance.Proved).ToList();
        Assert.NotEmpty(findings);
        foreach (var finding in findings)
        {
            for (int i = 0; i < Points; i++)
            {
                double value = measured.Value(finding, place.AsSpan(4 * i, 4));
                if (double.IsNaN(value)) continue;
                Assert.True(IsWithin(finding, value), $"{finding.Id}: sampled {value:R}, bound {finding.Bound:R}");
            }
            // The attained value is what the quantity is at the place named, and on the good side of its own bound.
            Assert.Equal(finding.Value, measured.Value(finding, finding.Worst!.P_B, finding.Worst.Rotary), 1e-9);
            Assert.True(IsWithin(finding, finding.Value), finding.Id);
        }
    }, seed: "0N0XIzNsQ0O2", iter: Effort.Cases(15), threads: 1);

    private static bool IsWithin(Judged finding, double value) => finding.Rule.Sense switch
    {
        Sense.AtMost => value <= finding.Bound + 1e-9,
        Sense.AtLeast => value >= finding.Bound - 1e-9,
        _ => Math.Abs(value - Middle(finding)) <= Math.Abs(finding.Bound - Middle(finding)) + 1e-9,
    };

    private static double Middle(Judged finding) => (finding.Limit.Lower + finding.Limit.Upper) / 2;

    /// <summary>What a finding's quantity is at one pose.</summary>
    private sealed class Poses(Cell cell, CellGeometry geometry)
    {
        private readonly DeltaRobot _robot = geometry.Robot!;
        private readonly Robot _stated = cell.Robot;

        public double Value(Judged finding, ReadOnlySpan<double> share)
        {
            var box = geometry.Stations.Single(s => StationInputs.Pointer(s.Id) == finding.Subject.Pointer);
            Vec3 size = box.High - box.Low, s = box.Low + new Vec3(share[0] * size.X, share[1] * size.Y, share[2] * size.Z);
            double angle = box.RotaryFrom + share[3] * (box.RotaryTo - box.RotaryFrom);
            return Value(finding, geometry.PlatformFor(box.X_CS * s, angle, box.LinearAxisAt), angle);
        }

        public double Value(Judged finding, Vec3 p, double angle)
        {
            int chain = _robot.ChainIds.IndexOf(finding.Subject.Case);
            return finding.Rule.Id switch
            {
                "reach.closure" => UseOfReach(_robot.Chains[chain], p),
                "reach.travel" or "reach.turn" => _robot.Inverse(p)[chain],
                "reach.swing" => Swing.Of(_robot.Chains[chain], RobotInputs.Joints(_stated, new())[chain], p, _robot.Inverse(p)[chain]),
                "reach.dexterity" => Condition(p),
                "reach.step" => PoseResult.At(_robot, p).StepMovement(RobotInputs.DriveSteps(_stated, new()).AsSpan()),
                "reach.rod-clearance" => Clearance(Rods(p), finding.Subject.Case),
                "reach.tool-clearance" => Clearance(Hanging(p, angle), finding.Subject.Case),
                var id => throw new InvalidOperationException(id),
            };
        }

        /// <summary>Rail: distance of the platform joint from the rail's line over the rod. Crank: the cosine at the shoulder of the
        /// triangle of arm, rod as seen in the arm's plane, and the line from shoulder to platform joint.</summary>
        private static double UseOfReach(Chain chain, Vec3 p)
        {
            var w = p + chain.B - chain.Foot;
            if (chain.Family == RobotFamily.RailDelta) return w.Cross(chain.E).Norm / chain.Rod;
            double aside = w.Dot(chain.E.Cross(chain.F)), seen2 = chain.Rod * chain.Rod - aside * aside, line2 = w.NormSquared - aside * aside;
            return Math.Abs((line2 + chain.Arm * chain.Arm - seen2) / (2 * chain.Arm * Math.Sqrt(line2)));
        }

        private double Condition(Vec3 p)
        {
            var rows = PoseResult.At(_robot, p).DqDp;
            if (!rows.Row0.IsFinite || !rows.Row1.IsFinite || !rows.Row2.IsFinite) return double.NaN;
            return Matrix<double>.Build.DenseOfRowArrays([.. new[] { rows.Row0, rows.Row1, rows.Row2 }.Select(r => new[] { r.X, r.Y, r.Z })]).Svd().ConditionNumber;
        }

        private ImmutableArray<(int Chain, Capsule Body)> Rods(Vec3 p)
        {
            var pairs = RobotInputs.Rods(_stated, new());
            var q = _robot.Inverse(p);
            return [.. from i in Enumerable.Range(0, 3)
                from side in new[] { -0.5, 0.5 }
                let chain = _robot.Chains[i]
                let aside = side * pairs[i].Spacing * chain.Side
                select (i, new Capsule(chain.Joint(q[i]) + aside, p + chain.B + aside, pairs[i].Diameter / 2))];
        }

        private ImmutableArray<(int Chain, Capsule Body)> Hanging(Vec3 p, double angle) =>
        [
            (-1, new(p, p + Mat3.RotationZ(angle) * geometry.Tcp_P, cell.Tool.Radius!.Value)),
            (-1, new(p, p, _stated.Dexterity.PlatformRadius!.Value)),
        ];

        private double Clearance(ImmutableArray<(int Chain, Capsule Body)> bodies, string against)
        {
            if (against == "rods")
                return (from a in bodies from b in bodies where a.Chain < b.Chain select a.Body.ClearanceTo(b.Body)).Min();
            var still = geometry.Obstacles.Where(o => o.Owner.StartsWith(against == "frame" ? "/frame" : "/stations", StringComparison.Ordinal));
            return (from a in bodies from o in still from b in Slices(o) select a.Body.ClearanceTo(b)).Min();
        }

        /// <summary>A plate as lines one above the other, among them its edges; a line as itself. Base frame.</summary>
        private IEnumerable<Capsule> Slices(Obstacle o)
        {
            var x_BC = geometry.X_CB.Inverse();
            int slices = o.Rise_C == Vec3.Zero ? 0 : 40;
            for (int i = 0; i <= slices; i++)
            {
                var up = slices == 0 ? Vec3.Zero : i / (double)slices * o.Rise_C;
                yield return new(x_BC * (o.From_C + up), x_BC * (o.To_C + up), o.Radius);
            }
        }
    }
}
