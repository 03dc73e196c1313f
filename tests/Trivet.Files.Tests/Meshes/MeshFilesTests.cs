using System.Globalization;
using System.Numerics;
using System.Text;
using SharpGLTF.Schema2;
using Trivet.Cells;
using Trivet.Files.Meshes;
using Trivet.Numerics;
using Xunit;

namespace Trivet.Files.Tests.Meshes;

/// <summary>
/// Mesh files of a tool part. STL files are written here as the format is commonly described; glTF files by SharpGLTF, a general-purpose library. The
/// body is a block whose mass properties are closed forms.
/// </summary>
public sealed class MeshFilesTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("trivet-mesh-");

    public void Dispose() => _folder.Delete(recursive: true);

    // A block of 80 × 50 × 20 mm below its upper face, in millimetres, z up, facing outward.
    private static readonly Vector3[] Corners = [.. Enumerable.Range(0, 8).Select(i => new Vector3(-40 + 80 * (i & 1), -25 + 50 * ((i >> 1) & 1), -20 + 20 * ((i >> 2) & 1)))];

    private static readonly int[] Order = [0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7, 5];

    private static MassProperties Block => SolidShapes.Box(0.08, 0.05, 0.02).MovedBy(new(0, 0, -0.01));

    private string Named(string name) => Path.Combine(_folder.FullName, name);

    private string Binary(string name, IEnumerable<int> order)
    {
        int[] all = [.. order];
        using var file = new BinaryWriter(File.Create(Named(name)));
        file.Write(Encoding.ASCII.GetBytes("solid as a head, although it is binary".PadRight(80)));
        file.Write((uint)(all.Length / 3));
        for (int i = 0; i < all.Length; i += 3)
        {
            for (int k = 0; k < 3; k++) file.Write(0f);
            foreach (int corner in all[i..(i + 3)])
            {
                file.Write(Corners[corner].X);
                file.Write(Corners[corner].Y);
                file.Write(Corners[corner].Z);
            }
            file.Write((ushort)0);
        }
        return Named(name);
    }

    private string Text(string name)
    {
        var text = new StringBuilder("solid block\n");
        for (int i = 0; i < Order.Length; i += 3)
        {
            text.Append(" facet normal 0 0 0\n  outer loop\n");
            foreach (int corner in Order[i..(i + 3)])
                text.Append(CultureInfo.InvariantCulture, $"   vertex {Corners[corner].X:e} {Corners[corner].Y:e} {Corners[corner].Z:e}\n");
            text.Append("  endloop\n endfacet\n");
        }
        File.WriteAllText(Named(name), text.Append("endsolid block\n").ToString());
        return Named(name);
    }

    private static void IsTheBlock((MassProperties? Mesh, string Problem, string Remedy) read)
    {
        Assert.Equal("", read.Problem);
        var body = read.Mesh!.Value;
        Assert.Equal(Block.Mass, body.Mass, 10);
        Assert.InRange((body.Centre - Block.Centre).Norm, 0, 1e-8);
        Assert.Equal(Block.Inertia.Row0.X, body.Inertia.Row0.X, 12);
        Assert.Equal(Block.Inertia.Row1.Y, body.Inertia.Row1.Y, 12);
        Assert.Equal(Block.Inertia.Row2.Z, body.Inertia.Row2.Z, 12);
    }

    [Fact]
    public void Binary_and_text_of_one_body_say_the_same()
    {
        IsTheBlock(MeshFiles.Read(Binary("block.stl", Order), 0.001));
        IsTheBlock(MeshFiles.Read(Text("text.stl"), 0.001));
        Assert.Equal(Block.Mass * Math.Pow(25.4, 3), MeshFiles.Read(Named("block.stl"), 0.0254).Mesh!.Value.Mass, 9);
    }

    /// <summary>y up becomes z up; a node that scales, turns and mirrors is followed.</summary>
    [Theory]
    [InlineData("block.glb")]
    [InlineData("block.gltf")]
    public void A_file_that_a_library_wrote_is_read(string name)
    {
        var model = ModelRoot.CreateModel();
        var primitive = model.CreateMesh("block").CreatePrimitive();
        // In millimetres and y up; the node makes metres of it and mirrors it along x, which turns its triangles over.
        byte[] points = [.. Corners.SelectMany(c => new[] { -c.X, c.Z, -c.Y }).SelectMany(BitConverter.GetBytes)];
        byte[] triangles = [.. Order.Chunk(3).SelectMany(t => new[] { t[0], t[2], t[1] }).SelectMany(i => BitConverter.GetBytes((ushort)i))];
        var positions = model.CreateAccessor("positions");
        positions.SetVertexData(model.UseBufferView(points), 0, Corners.Length, SharpGLTF.Memory.AttributeFormat.Float3);
        var order = model.CreateAccessor("order");
        order.SetIndexData(model.UseBufferView(triangles), 0, Order.Length, IndexEncodingType.UNSIGNED_SHORT);
        primitive.SetVertexAccessor("POSITION", positions);
        primitive.SetIndexAccessor(order);
        var node = model.UseScene("main").CreateNode("outer").CreateNode("inner");
        node.LocalTransform = Matrix4x4.CreateScale(-0.001f, 0.001f, 0.001f);
        node.Mesh = model.LogicalMeshes[0];
        model.Save(Named(name));
        IsTheBlock(MeshFiles.Read(Named(name), 0.001));
    }

    [Fact]
    public void Open_turned_and_inverted_surfaces_are_refused_with_what_is_wrong()
    {
        Assert.Contains("open: 3 edges", MeshFiles.Read(Binary("open.stl", Order[3..]), 0.001).Problem, StringComparison.Ordinal);
        Assert.Contains("opposite ways", MeshFiles.Read(Binary("turned.stl", [Order[1], Order[0], Order[2], .. Order[3..]]), 0.001).Problem, StringComparison.Ordinal);
        Assert.Contains("inverted", MeshFiles.Read(Binary("inverted.stl", Order.Reverse()), 0.001).Problem, StringComparison.Ordinal);
        Assert.Contains("no triangle", MeshFiles.Read(Binary("empty.stl", []), 0.001).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_broken_file_is_refused_and_never_throws()
    {
        byte[] whole = File.ReadAllBytes(Binary("whole.stl", Order));
        File.WriteAllBytes(Named("cut.stl"), whole[..^70]);
        Assert.NotEqual("", MeshFiles.Read(Named("cut.stl"), 0.001).Problem);
        var random = new Random(3);
        foreach (string name in (string[])["noise.stl", "noise.glb", "noise.gltf"])
        {
            for (int i = 0; i < 200; i++)
            {
                byte[] noise = new byte[random.Next(400)];
                random.NextBytes(noise);
                if (i % 2 == 0) Encoding.ASCII.GetBytes(name.EndsWith("stl", StringComparison.Ordinal) ? "solid" : "glTF\u0002").AsSpan(0, Math.Min(5, noise.Length)).CopyTo(noise);
                File.WriteAllBytes(Named(name), noise);
                Assert.NotEqual("", MeshFiles.Read(Named(name), 0.001).Problem);
            }
        }
        Assert.Contains("no such file", MeshFiles.Read(Named("gone.stl"), 0.001).Problem, StringComparison.Ordinal);
        File.WriteAllText(Named("body.step"), "");
        Assert.Contains("name does not say", MeshFiles.Read(Named("body.step"), 0.001).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_gltf_file_does_not_read_elsewhere_on_the_disk()
    {
        File.WriteAllText(Named("out.gltf"), """
            {"asset":{"version":"2.0"},"scene":0,"scenes":[{"nodes":[0]}],"nodes":[{"mesh":0}],"meshes":[{"primitives":[{"attributes":{"POSITION":0}}]}],
             "accessors":[{"bufferView":0,"componentType":5126,"count":3,"type":"VEC3"}],"bufferViews":[{"buffer":0,"byteLength":36}],"buffers":[{"byteLength":36,"uri":"../secret.bin"}]}
            """);
        Assert.Contains("elsewhere", MeshFiles.Read(Named("out.gltf"), 0.001).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cell_file_takes_its_meshes_along_and_keeps_them_without_the_file()
    {
        Binary("block.stl", Order);
        string path = Named("cell.json");
        File.WriteAllText(path, """{ "trivet": 1, "tool": { "parts": { "body": { "shape": "mesh", "density": "2700 kg/m³", "mesh": { "file": "block.stl" } } } } }""");
        var cell = CellFile.Load(path).Cell!;
        Assert.Equal(Block.Mass, cell.Tool.Parts["body"].Mesh.Volume!.Value, 10);
        Assert.Equal(-0.01, cell.Tool.Parts["body"].Mesh.CentreZ!.Value, 8);

        File.WriteAllText(path, CellFile.Write(cell));
        File.Delete(Named("block.stl"));
        Assert.Equal(cell.Tool.Parts["body"].Mesh.GyrationX!.Value, CellFile.Load(path).Cell!.Tool.Parts["body"].Mesh.GyrationX!.Value, 12);
    }

    [Fact]
    public void A_refused_mesh_names_its_line_in_the_cell_file()
    {
        Binary("open.stl", Order[3..]);
        string path = Named("cell.json");
        File.WriteAllText(path, "{ \"trivet\": 1,\n  // a comment\n  \"tool\": { \"parts\": { \"body\": {\n    \"shape\": \"mesh\", \"mesh\": { \"file\": \"open.stl\" } } } } }");
        var error = Assert.Single(CellFile.Load(path).Errors);
        Assert.Equal((4, 40, "/tool/parts/body/mesh/file"), (error.Line, error.Column, error.Pointer));
        Assert.StartsWith("open.stl: the surface is open", error.Problem, StringComparison.Ordinal);
    }
}
