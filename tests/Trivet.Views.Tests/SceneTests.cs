using Trivet.Assessment;
using Trivet.Numerics;
using Trivet.Testing;

namespace Trivet.Views.Tests;

public sealed class SceneTests
{
    private static readonly string[] Kinds = ["box", "capsule", "mesh", "point"];

    [Fact]
    public void Every_part_is_a_known_kind_with_its_count_of_finite_numbers()
    {
        foreach (var (_, cell) in HandMadeCells.All)
        {
            foreach (var item in Scene.Fixed(cell, SceneVolume.Following(null, cell), HandMadeCells.Marked).Items.Concat(Scene.Moving(cell, 0.6, 0.5, 0.86, 0, 0).Items))
            {
                Assert.Contains(item.Kind, Kinds);
                Assert.All(item.Numbers, n => Assert.True(double.IsFinite(n)));
                Assert.Equal(item.Kind switch { "box" => 7, "capsule" => 7, "point" => 3, _ => item.Numbers.Length / 3 * 3 }, item.Numbers.Length);
                Assert.All(item.Triangles, t => Assert.InRange(t, 0, item.Numbers.Length / 3 - 1));
                if (item.Kind == "box") Assert.All(item.Numbers.AsSpan(3, 3).ToArray(), half => Assert.True(half >= 0));
            }
        }
    }

    [Fact]
    public void Rods_join_carriages_to_the_platform_that_carries_the_tool()
    {
        var rods = Scene.Moving(HandMadeCells.RailDelta, 0.6, 0.5, 0.86, 0, 0).Items.Where(i => i.Role == "rod").ToList();
        Assert.Equal(6, rods.Count);
        foreach (var rod in rods)
        {
            Vec3 from = new(rod.Numbers[0], rod.Numbers[1], rod.Numbers[2]), to = new(rod.Numbers[3], rod.Numbers[4], rod.Numbers[5]);
            Assert.Equal(0.45, (to - from).Norm, 1e-4);
            Assert.True(from.Z > to.Z);
        }
    }

    [Fact]
    public void Out_of_reach_nothing_moves()
    {
        Assert.Empty(Scene.Moving(HandMadeCells.RailDelta, 3, 0.5, 0.86, 0, 0).Items);
        Assert.Empty(Scene.Moving(HandMadeCells.Nothing, 0.6, 0.5, 0.86, 0, 0).Items);
    }

    [Fact]
    public void Past_an_end_stop_the_robot_is_drawn_with_the_chains_marked_that_are_why()
    {
        Assert.DoesNotContain(Scene.Moving(HandMadeCells.RailDelta, 0.6, 0.5, 0.86, 0, 0).Items, i => i.Role == Scene.Beyond);
        var beyond = Scene.Moving(HandMadeCells.RailDelta, 0.6, 0.5, 1.6, 0, 0).Items;
        Assert.Equal(6, beyond.Count(i => i.Role == "rod"));
        Assert.NotEmpty(beyond.Where(i => i.Role == Scene.Beyond));
    }

    [Fact]
    public void The_volume_encloses_a_point_that_is_reached_and_can_be_left_out()
    {
        var volume = Assert.Single(Scene.Fixed(HandMadeCells.RailDelta, SceneVolume.Following(null, HandMadeCells.RailDelta)).Items, i => i.Role == "volume");
        Assert.InRange(0.6, volume.Numbers.Where((_, i) => i % 3 == 0).Min(), volume.Numbers.Where((_, i) => i % 3 == 0).Max());
        Assert.InRange(0.86, volume.Numbers.Where((_, i) => i % 3 == 2).Min(), volume.Numbers.Where((_, i) => i % 3 == 2).Max());
        Assert.DoesNotContain(Scene.Fixed(HandMadeCells.RailDelta).Items, i => i.Role == "volume");
    }

    [Fact]
    public void The_volume_is_kept_while_stations_move_and_made_anew_for_another_mount()
    {
        var cell = ReachCells.Rail;
        var first = SceneVolume.Following(null, Assess.Preview(cell));
        var nest = cell.Stations["nest"];
        Assert.NotEmpty(first.Items);
        Assert.Same(first, SceneVolume.Following(first, Assess.Preview(cell with { Stations = cell.Stations.SetItem("nest", nest with { X = nest.X + 0.01 }) })));
        Assert.NotSame(first, SceneVolume.Following(first, Assess.Preview(cell with { Mount = cell.Mount with { Z = cell.Mount.Z + 0.01 } })));
    }

    // A closed surface of outward triangles has a positive volume by the divergence theorem.
    [Fact]
    public void A_slanting_member_is_a_closed_mesh_turned_outward()
    {
        var cell = HandMadeCells.RailDelta;
        var members = cell.Cell.Frame.Members.Add("brace", new() { FromX = 0, FromY = 0, FromZ = 0.7, ToX = 0.6, ToY = 0.1, ToZ = 1.7, SectionWidth = 0.03, SectionHeight = 0.04 });
        var brace = Assert.Single(Scene.Fixed(cell with { Cell = cell.Cell with { Frame = new() { Members = members } } }).Items, i => i.Pointer == "/frame/members/brace");
        double six = 0;
        for (int t = 0; t < brace.Triangles.Length; t += 3) six += At(t).Dot(At(t + 1).Cross(At(t + 2)));
        double length = new Vec3(0.6, 0.1, 1.0).Norm;
        Assert.Equal(0.03 * 0.04 * length, six / 6, 1e-5);

        Vec3 At(int corner)
        {
            int v = 3 * brace.Triangles[corner];
            return new(brace.Numbers[v], brace.Numbers[v + 1], brace.Numbers[v + 2]);
        }
    }

    [Fact]
    public void The_worst_place_of_a_marked_finding_is_a_point()
    {
        var worst = Assert.Single(Scene.Fixed(HandMadeCells.RailDelta, marked: HandMadeCells.Marked).Items, i => i.Role == "worst");
        Assert.Equal([0.86, 0.78, 0.80], worst.Numbers);
    }
}
