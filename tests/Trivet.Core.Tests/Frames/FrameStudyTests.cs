using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using Trivet.Cells;
using Trivet.Frames;
using Trivet.Numerics;
using Xunit;

namespace Trivet.Core.Tests.Frames;

/// <summary>Band, measurements, answer to a reaction, feet and braces of a small invented frame with a robot on it.</summary>
public class FrameStudyTests
{
    private const double Width = 1.0, Depth = 0.8, Height = 1.6, RobotMass = 30;

    /// <summary>Four posts, four beams on top, two cross-beams with the robot hung between them.</summary>
    private static FrameInput Box(double from = 2e4, double to = 1e5)
    {
        var section = Section.Tube(0.06, 0.06, 0.003, 0.33);
        List<FrameLine> lines = [];
        double[] xs = [0, Width], ys = [0, Depth], crossings = [0.35, 0.65], rows = [0.25, 0.55];
        foreach (double x in xs)
            foreach (double y in ys) Add($"post-{x}-{y}", new(x, y, 0), new(x, y, Height));
        foreach (double y in ys) Add($"long-{y}", new(0, y, Height), new(Width, y, Height));
        foreach (double x in xs) Add($"short-{x}", new(x, 0, Height), new(x, Depth, Height));
        foreach (double x in crossings) Add($"cross-{x}", new(x, 0, Height), new(x, Depth, Height));
        Vec3[] bolts = [.. crossings.SelectMany(x => rows.Select(y => new Vec3(x, y, Height - 0.05)))];
        Vec3 origin = new(Width / 2, Depth / 2, Height - 0.05);
        return new([.. lines], false, from, to, FootHold.Joint, [], new(origin, [.. bolts], [new(origin, RobotMass)]));

        void Add(string id, Vec3 a, Vec3 b) => lines.Add(FrameCases.Line(a, b, section, id: id) with { Reach = 0.042 });
    }

    private static readonly FrameStudy Study = FrameStudy.Of(Box());

    private static ReactionOverTime Shake(double amplitude = 40, double period = 0.8, double steady = -20)
    {
        const int Steps = 400;
        double[] times = [.. Enumerable.Range(0, Steps + 1).Select(i => period * i / Steps)];
        return new([.. times], [.. times.Select(t => new Vec3(amplitude * Pulse(t / period), 0, steady))], [.. times.Select(_ => Vec3.Zero)]);

        // Half a period of pushing forth and back, then rest.
        static double Pulse(double s) => s < 0.5 ? Math.Sin(4 * Math.PI * s) : 0;
    }

    [Fact]
    public void No_choice_of_joints_within_the_interval_leaves_the_band()
    {
        // Rayleigh's principle, tried: every joint gets its own stiffness at random, which is more than the study itself ever does.
        var mesh = Study.Mesh;
        var random = new Random(3);
        for (int trial = 0; trial < 5; trial++)
        {
            double[] own = [.. mesh.Joints.Select(_ => 2e4 * Math.Pow(5, random.NextDouble()))];
            Trivet.Numerics.Sparse.Patch[] springs = [.. mesh.Springs(1).Select((s, i) => s with { Values = [.. s.Values.Select(v => v * own[i])] })];
            Trivet.Numerics.Sparse.Patch[] stiffness = [.. mesh.Elements, .. springs];
            var modes = Trivet.Numerics.Sparse.LowestModes.Of(mesh.Pattern, Trivet.Numerics.Sparse.SparseFactor.Of(mesh.Pattern, stiffness), stiffness, mesh.Masses, 6);
            for (int i = 0; i < 6; i++)
            {
                double hz = Math.Sqrt(modes.Values[i]) / Math.Tau;
                Assert.InRange(hz, Study.Band(i).Low, Study.Band(i).High);
            }
        }
    }

    [Fact]
    public void All_weight_stands_on_the_feet_and_hangs_straight()
    {
        double g = 9.80665, weight = Study.Soft.Mass * g;
        double beams = Study.Mesh.Input.Lines.Sum(l => l.Beam.Mass * l.Bar.Length);
        Assert.Equal(beams + RobotMass, Study.Soft.Mass, 1e-9);
        var feet = Study.Soft.FeetUnderWeight;
        Assert.Equal(weight, -feet.Sum(f => f.Force.Z), 1e-6 * weight);
        Assert.Equal(0, feet.Sum(f => f.Force.X), 1e-6 * weight);
        // Symmetric: all four alike, and the robot sinks without tilting.
        Assert.All(feet, f => Assert.Equal(-weight / 4, f.Force.Z, 1e-6 * weight));
        var down = Study.Soft.MountOf(Study.Soft.UnderWeight);
        Assert.True(down.Moved.Z < 0);
        Assert.Equal(0, FrameChecks.TiltOf(down), 1e-9);
    }

    [Fact]
    public void A_tap_finds_the_stiffness_that_made_it()
    {
        // A rehearsed measurement: the frequency of joints of 41 kN·m/rad, known to 1 %.
        double hz = FrameSolution.Of(Study.Mesh, 4.1e4, 4).Modes[0].Hz;
        var study = FrameStudy.Of(Box(), new() { TapFrequency = hz, TapUncertainty = 0.002 * hz, TapDamping = 0.02, TapDampingUncertainty = 0.002 });
        var one = Assert.Single(study.Measurements);
        Assert.NotNull(one.Left);
        Assert.True(study.Joints.Contains(4.1e4));
        Assert.True(study.Joints.To / study.Joints.From < 1.25);
        Assert.Equal(0.016, study.DampingFrom, 1e-9);
        Assert.InRange(hz, study.Band(0).Low, study.Band(0).High);
    }

    [Fact]
    public void A_pull_narrows_too_and_what_no_joint_explains_is_told()
    {
        var place = Study.Mesh.Lines[0][^1];
        double give = 100 * FrameSolution.Of(Study.Mesh, 6e4, 1).Give(place, Vec3.UnitX);
        var pull = new FrameMeasured { PullForce = 100, PullX = place.P.X, PullY = place.P.Y, PullZ = place.P.Z, PullDeflection = give, PullUncertainty = 0.01 * give };
        var study = FrameStudy.Of(Box(), pull);
        Assert.True(study.Joints.Contains(6e4));
        Assert.True(study.Joints.To / study.Joints.From < 3);
        Assert.Null(Assert.Single(FrameStudy.Of(Box(), pull with { PullDeflection = 5 * give }).Measurements).Left);
    }

    [Fact]
    public void The_answer_to_a_reaction_is_that_of_the_whole_model_integrated_step_by_step()
    {
        // Second opinion of another kind: all unknowns at once, Newmark's rule of mean acceleration (from memory) with Math.NET's dense algebra, from rest until
        // the cycle repeats. Damping: that of the ten modes, as a matrix.
        const double Damping = 0.03, Joint = 2e4;
        var mesh = FrameMesh.Of(Box(), 15);
        var solution = FrameSolution.Of(mesh, Joint, 10);
        var reaction = Shake();
        var response = FrameResponse.Of(solution, Damping, reaction);
        int n = mesh.Pattern.Unknowns, push = mesh.Mount!.Translation;
        var (k, m) = (Sum(mesh.Elements.Concat(mesh.Springs(Joint))), Sum(mesh.Masses));
        var c = Matrix<double>.Build.Dense(n, n);
        foreach (var mode in solution.Modes)
        {
            var along = m * Vector<double>.Build.Dense(mode.Vector);
            c += 2 * Damping * mode.Omega * along.OuterProduct(along);
        }

        double h = reaction.Time[1], steady = reaction.Mean().Force.X;
        var effective = (4 / (h * h) * m + 2 / h * c + k).Cholesky();
        Vector<double> u = Vector<double>.Build.Dense(n), v = u.Clone(), a = u.Clone();
        double[] moved = new double[reaction.Time.Length];
        for (int cycle = 0; cycle < 12; cycle++)
        {
            for (int i = 1; i < reaction.Time.Length; i++)
            {
                var load = m * (4 / (h * h) * u + 4 / h * v + a) + c * (2 / h * u + v);
                load[push] += reaction.Force[i].X - steady;
                var next = effective.Solve(load);
                var acceleration = 4 / (h * h) * (next - u) - 4 / h * v - a;
                v += h / 2 * (a + acceleration);
                (u, a) = (next, acceleration);
                moved[i] = u[push];
            }
        }

        double most = moved.Max(Math.Abs);
        Assert.True(most > 1.3 * 40 * Math.Abs(solution.Under(Vec3.UnitX, Vec3.Zero).Moved.X) * 0.5);
        for (int i = 1; i < moved.Length; i += 7) Assert.Equal(moved[i], response.At(i).Moved.X, 0.02 * most);

        Matrix<double> Sum(IEnumerable<Trivet.Numerics.Sparse.Patch> patches)
        {
            var sum = Matrix<double>.Build.Dense(n, n);
            foreach (var p in patches)
                for (int i = 0; i < p.Size; i++)
                    for (int j = 0; j < p.Size; j++)
                        if (p.Unknowns[i] >= 0 && p.Unknowns[j] >= 0) sum[p.Unknowns[i], p.Unknowns[j]] += p.Values[i * p.Size + j];
            return sum;
        }
    }

    [Fact]
    public void One_mode_alone_settles_as_its_envelope_says()
    {
        // A push that ends suddenly leaves the first mode ringing: the wait to a tenth takes ln 10 / (ζω) within a half period.
        var reaction = Shake(period: 6, steady: 0);
        int at = reaction.IndexAt(3.0);
        var response = FrameResponse.Of(Study.Soft, 0.02, reaction);
        double left = response.Swing(at, 0).At(Vec3.Zero).Norm;
        double omega = Study.Soft.Modes.First(m => Math.Abs(Study.Soft.MountOf(m.Vector).Moved.X) > 1e-3).Omega, half = Math.PI / omega;
        double largest = Enumerable.Range(0, 200).Max(k => response.Swing(at, k * 2 * half / 200).At(Vec3.Zero).Norm);
        double wait = response.SettlingTime(at, Vec3.Zero, largest / 10);
        Assert.True(left > 0);
        Assert.InRange(wait, Math.Log(10) / (0.02 * omega) - 2 * half, Math.Log(10) / (0.02 * omega) + 2 * half);
        Assert.Equal(0, response.SettlingTime(at, Vec3.Zero, 2 * largest));
        // After the wait it never leaves again.
        for (int k = 1; k < 400; k++) Assert.True(response.Swing(at, wait + k * half / 20).At(Vec3.Zero).Norm <= largest / 10 * 1.02);
    }

    [Fact]
    public void Feet_carry_the_push_and_tipping_is_that_of_a_stiff_block_where_nothing_swings()
    {
        // A slow push F at height h on a weight W over a footprint of width b tips where F·h = W·b/2 (statics).
        var reaction = Shake(amplitude: 100, period: 20, steady: 0);
        var loads = FootLoads.Of(Study, Study.FineJoints, reaction, 1);
        double weight = Study.Soft.Mass * 9.80665, expected = weight * Width / 2 / (100 * (Height - 0.05));
        Assert.Equal(expected, loads.Safety, 0.02 * expected);
        Assert.Equal(weight, loads.Feet.Sum(f => f.Weight), 1e-6 * weight);
        // What the held feet pass on by turning is not in their pull: both together make the moment, and the weights bend the posts a little besides.
        double lifted = loads.Feet.Average(f => f.Largest) - weight / 4, turned = loads.Feet.Sum(f => f.Moment), moment = 100 * (Height - 0.05);
        Assert.InRange(2 * lifted * Width + turned, moment, 1.15 * moment);
        // Anchors 100 mm apart: what lifts a foot and, as a couple, its moment, which need not be largest where the other is: at most both together.
        Assert.All(FootLoads.Of(Study, Study.FineJoints, reaction, 1, 0.1).Feet, f => Assert.InRange(f.Pull, Math.Max(-f.Smallest, f.Moment / 0.1 - f.Largest), -f.Smallest + f.Moment / 0.1));
        Assert.All(loads.Feet, f => Assert.Equal(-f.Smallest, f.Pull));
        // A stop twice as hard as the push: half as safe, and weight counts once.
        var fault = FootLoads.Of(Study, Study.FineJoints, reaction, 2);
        Assert.Equal(loads.Safety / 2, fault.Safety, 1e-6 * loads.Safety);
        for (int i = 0; i < fault.Feet.Length; i++)
        {
            Assert.Equal(loads.Feet[i].Weight, fault.Feet[i].Weight, 1e-9 * weight);
            Assert.Equal(2 * (loads.Feet[i].Largest - weight / 4), fault.Feet[i].Largest - weight / 4, 1e-6 * weight);
        }
    }

    [Fact]
    public void No_stiffness_between_the_samples_swings_more_than_they_reserve()
    {
        // Tried at stiffnesses that are the study's own nowhere: a push whose second harmonic meets the first mode inside the interval.
        var (low, high) = Study.Band(0);
        var reaction = Shake(period: 2 / (0.5 * (low + high)));
        var joints = Study.FineJoints;
        Assert.InRange(joints.At.Length, 9, 17);
        Assert.InRange(joints.Rise, 1, 3);
        double sampled = joints.At.Max(Swing), seen = 0;
        for (int i = 0; i < 150; i++) seen = Math.Max(seen, Swing(2e4 * Math.Pow(5, (i + 0.37) / 150)));
        Assert.True(seen <= sampled * joints.Rise, $"{seen} beyond {sampled}·{joints.Rise}");
        Assert.True(seen > 1.15 * Study.SampledJoints.Max(Swing), "the case does not tell coarse samples from what is reserved");

        double Swing(double joint)
        {
            var response = FrameResponse.Of(FrameSolution.Of(Study.Mesh, joint, FrameStudy.ModeCount), Study.DampingFrom, reaction);
            return Enumerable.Range(0, reaction.Time.Length).Max(i => response.Swing(i, 0).At(Vec3.Zero).Norm);
        }
    }

    [Fact]
    public void A_brace_in_the_softest_direction_gains_most_for_its_mass()
    {
        var braces = BraceAdvice.Find(Study, Study.Mesh.Input.Lines[0], TestContext.Current.CancellationToken);
        Assert.NotEmpty(braces);
        Assert.True(braces[0].GainedLow > 0.3, string.Join("\n", braces));
        // Tried out whole: the frame with that brace rings as promised.
        var with = Study.Mesh.Input with
        {
            Lines = Study.Mesh.Input.Lines.Add(Study.Mesh.Input.Lines[0] with { Bar = Study.Mesh.Input.Lines[0].Bar with { Id = "brace", From = braces[0].From, To = braces[0].To } }),
        };
        Assert.Equal(braces[0].Low, FrameStudy.Of(with).Band(0).Low, 0.01 * braces[0].Low);
        Assert.Equal([.. braces.OrderByDescending(b => b.PerKilogram)], braces);
    }

    [Fact]
    public void Softer_feet_lower_every_frequency_and_pinned_ones_most()
    {
        double fixedHz = FrameCases.Hz(Box() with { Hold = FootHold.Fixed }, 1, 60, 5e4)[0], joint = FrameCases.Hz(Box(), 1, 60, 5e4)[0];
        double pinned = FrameCases.Hz(Box() with { Hold = FootHold.Pinned }, 1, 60, 5e4)[0];
        Assert.True(fixedHz > joint && joint > pinned);
    }
}
