using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Text.Json;
using Trivet.Numerics;

namespace Trivet.Files.Meshes;

/// <summary>
/// Reads the triangles of a glTF 2.0 file (ISO/IEC 12113; Khronos, glTF 2.0 Specification): JSON with its buffers embedded or beside it, or the binary
/// container (.glb). The default scene is read, or the first; nodes place meshes by matrix or by translation, rotation and scale. glTF is in metres and
/// y up: its x, y, z become x, −z, y. A mirroring node turns its triangles, so that outside stays outside. Compressed or sparse data are refused.
/// </summary>
internal static class GltfFile
{
    private const uint Magic = 0x46546C67, JsonChunk = 0x4E4F534A, BinaryChunk = 0x004E4942;

    private const int Triangles = 4, Float = 5126, DeepestNode = 64;

    /// <param name="beside">Reads a file beside this one; null where it can not.</param>
    public static MeshRead Read(ReadOnlySpan<byte> bytes, Func<string, byte[]?> beside)
    {
        try
        {
            ReadOnlyMemory<byte> json, embedded = default;
            if (bytes.Length >= 20 && BinaryPrimitives.ReadUInt32LittleEndian(bytes) == Magic)
            {
                if (BinaryPrimitives.ReadUInt32LittleEndian(bytes[4..]) != 2) return MeshRead.Refused("it is not of glTF version 2", "write it as glTF 2.0");
                int length = checked((int)BinaryPrimitives.ReadUInt32LittleEndian(bytes[12..]));
                if (BinaryPrimitives.ReadUInt32LittleEndian(bytes[16..]) != JsonChunk) return Broken;
                json = bytes.Slice(20, length).ToArray();
                var rest = bytes[(20 + length)..];
                if (rest.Length >= 8 && BinaryPrimitives.ReadUInt32LittleEndian(rest[4..]) == BinaryChunk)
                    embedded = rest.Slice(8, checked((int)BinaryPrimitives.ReadUInt32LittleEndian(rest))).ToArray();
            }
            else json = bytes.ToArray();

            using var document = JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = 64 });
            return new Reader(document.RootElement, embedded, beside).Read();
        }
        catch (RefusedException refused)
        {
            return refused.Read;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or KeyNotFoundException or FormatException or OverflowException
            or ArgumentException or IndexOutOfRangeException)
        {
            return Broken;
        }
    }

    private static MeshRead Broken => MeshRead.Refused("it is cut off, or does not keep to glTF 2.0", "write it again as glTF 2.0");

    /// <summary>Leaves the walk through the nodes; never leaves this file.</summary>
    private sealed class RefusedException(MeshRead read) : Exception
    {
        public MeshRead Read => read;
    }

    private sealed class Reader(JsonElement root, ReadOnlyMemory<byte> embedded, Func<string, byte[]?> beside)
    {
        private readonly ImmutableArray<Vec3>.Builder _corners = ImmutableArray.CreateBuilder<Vec3>();
        private readonly Dictionary<int, ReadOnlyMemory<byte>> _buffers = [];

        public MeshRead Read()
        {
            string version = root.GetProperty("asset").GetProperty("version").GetString() ?? "";
            if (!version.StartsWith("2.", StringComparison.Ordinal)) return MeshRead.Refused("it is not of glTF version 2", "write it as glTF 2.0");
            if (root.TryGetProperty("extensionsRequired", out var required) && required.GetArrayLength() > 0)
                return MeshRead.Refused($"it needs the extension {required[0].GetString()}", "write it without compression and extensions");

            int scene = root.TryGetProperty("scene", out var chosen) ? chosen.GetInt32() : 0;
            if (!root.TryGetProperty("scenes", out var scenes) || scenes.GetArrayLength() <= scene) return MeshRead.Refused("it has no scene", "write it with what is to be weighed in its scene");
            if (scenes[scene].TryGetProperty("nodes", out var nodes))
            {
                // y up becomes z up.
                var up = new Placing(new(Vec3.UnitX, -Vec3.UnitZ, Vec3.UnitY), Vec3.Zero);
                foreach (var node in nodes.EnumerateArray()) Node(node.GetInt32(), up, 0);
            }

            return new(_corners.ToImmutable());
        }

        private void Node(int index, Placing parent, int depth)
        {
            if (depth > DeepestNode) throw Refuse("its nodes are nested too deeply", "write it with fewer levels");
            var node = root.GetProperty("nodes")[index];
            var placing = parent.Then(Placing.Of(node));
            if (node.TryGetProperty("mesh", out var mesh))
            {
                foreach (var primitive in root.GetProperty("meshes")[mesh.GetInt32()].GetProperty("primitives").EnumerateArray()) Primitive(primitive, placing);
            }
            if (node.TryGetProperty("children", out var children))
            {
                foreach (var child in children.EnumerateArray()) Node(child.GetInt32(), placing, depth + 1);
            }
        }

        private void Primitive(JsonElement primitive, Placing placing)
        {
            int mode = primitive.TryGetProperty("mode", out var stated) ? stated.GetInt32() : Triangles;
            if (mode != Triangles) throw Refuse("it has lines, points, strips or fans", "write it as single triangles");
            var points = Positions(primitive.GetProperty("attributes").GetProperty("POSITION").GetInt32());
            int[] order = primitive.TryGetProperty("indices", out var indices) ? Indices(indices.GetInt32()) : [.. Enumerable.Range(0, points.Length)];
            if (order.Length % 3 != 0) throw Refuse("a mesh of it has corners left over", "write it as single triangles");
            if (_corners.Count + order.Length > 3 * MeshRead.MostTriangles) throw new RefusedException(MeshRead.TooMany);
            bool mirrors = placing.Linear.Determinant() < 0;
            for (int i = 0; i < order.Length; i += 3)
            {
                Vec3 a = placing.At(points[order[i]]), b = placing.At(points[order[i + 1]]), c = placing.At(points[order[i + 2]]);
                if (!a.IsFinite || !b.IsFinite || !c.IsFinite) throw Refuse("it has a corner that is not a number", "write it again");
                _corners.Add(a);
                _corners.Add(mirrors ? c : b);
                _corners.Add(mirrors ? b : c);
            }
        }

        private Vec3[] Positions(int accessor)
        {
            var (data, stride, count, component, type) = Accessor(accessor, 12);
            if (component != Float || type != "VEC3") throw Refuse("its positions are not written as three floats", "write it without quantization");
            var points = new Vec3[count];
            for (int i = 0; i < count; i++)
            {
                var at = data.Span[(i * stride)..];
                points[i] = new(
                    BinaryPrimitives.ReadSingleLittleEndian(at), BinaryPrimitives.ReadSingleLittleEndian(at[4..]), BinaryPrimitives.ReadSingleLittleEndian(at[8..]));
            }
            return points;
        }

        private int[] Indices(int accessor)
        {
            int size = root.GetProperty("accessors")[accessor].GetProperty("componentType").GetInt32() switch { 5121 => 1, 5123 => 2, 5125 => 4, _ => throw new FormatException() };
            var (data, stride, count, _, _) = Accessor(accessor, size);
            var order = new int[count];
            for (int i = 0; i < count; i++)
            {
                var at = data.Span[(i * stride)..];
                order[i] = size switch { 1 => at[0], 2 => BinaryPrimitives.ReadUInt16LittleEndian(at), _ => checked((int)BinaryPrimitives.ReadUInt32LittleEndian(at)) };
            }
            return order;
        }

        private (ReadOnlyMemory<byte> Data, int Stride, int Count, int Component, string Type) Accessor(int index, int size)
        {
            var accessor = root.GetProperty("accessors")[index];
            if (accessor.TryGetProperty("sparse", out _) || !accessor.TryGetProperty("bufferView", out var at))
                throw Refuse("it holds sparse data", "write it without sparse accessors");
            var view = root.GetProperty("bufferViews")[at.GetInt32()];
            int count = accessor.GetProperty("count").GetInt32(), stride = Int(view, "byteStride", size);
            int start = checked(Int(view, "byteOffset", 0) + Int(accessor, "byteOffset", 0));
            var buffer = Buffer(view.GetProperty("buffer").GetInt32());
            if (count <= 0 || stride < size || start + (long)stride * (count - 1) + size > buffer.Length) throw new FormatException();
            return (buffer[start..], stride, count, accessor.GetProperty("componentType").GetInt32(), accessor.GetProperty("type").GetString() ?? "");
        }

        private static int Int(JsonElement owner, string name, int otherwise) => owner.TryGetProperty(name, out var value) ? value.GetInt32() : otherwise;

        private ReadOnlyMemory<byte> Buffer(int index)
        {
            if (_buffers.TryGetValue(index, out var known)) return known;
            const string Embedded = ";base64,";
            var buffer = root.GetProperty("buffers")[index];
            if (!buffer.TryGetProperty("uri", out var uri)) return _buffers[index] = embedded;
            string address = uri.GetString() ?? "";
            int comma = address.IndexOf(Embedded, StringComparison.Ordinal);
            if (address.StartsWith("data:", StringComparison.Ordinal) && comma > 0) return _buffers[index] = Convert.FromBase64String(address[(comma + Embedded.Length)..]);
            string name = Uri.UnescapeDataString(address);
            // Its data stand beside it or below, never elsewhere on the disk.
            if (name.Contains(':', StringComparison.Ordinal) || Path.IsPathRooted(name) || name.Split('/', '\\').Contains("..")) throw Refuse($"it keeps its data elsewhere, in {address}", "write it as one .glb file");
            return _buffers[index] = beside(name) is { } read ? read : throw Refuse($"{address}, which holds its data, can not be read", "put it beside the .gltf file, or write one .glb file");
        }

        private static RefusedException Refuse(string problem, string remedy) => new(MeshRead.Refused(problem, remedy));
    }

    /// <summary>An affine placing: linear part and shift.</summary>
    private readonly record struct Placing(Mat3 Linear, Vec3 Shift)
    {
        public Vec3 At(Vec3 p) => Linear * p + Shift;

        public Placing Then(Placing inner) => new(Linear * inner.Linear, Linear * inner.Shift + Shift);

        public static Placing Of(JsonElement node)
        {
            if (node.TryGetProperty("matrix", out var matrix))
            {
                // Column by column.
                double[] m = Numbers(matrix, 16);
                return new(new(new(m[0], m[4], m[8]), new(m[1], m[5], m[9]), new(m[2], m[6], m[10])), new(m[12], m[13], m[14]));
            }
            double[] t = node.TryGetProperty("translation", out var shift) ? Numbers(shift, 3) : [0, 0, 0];
            double[] q = node.TryGetProperty("rotation", out var rotation) ? Numbers(rotation, 4) : [0, 0, 0, 1];
            double[] s = node.TryGetProperty("scale", out var scale) ? Numbers(scale, 3) : [1, 1, 1];
            var (x, y, z, w) = (q[0], q[1], q[2], q[3]);
            var turn = new Mat3(
                new(1 - 2 * (y * y + z * z), 2 * (x * y - z * w), 2 * (x * z + y * w)), new(2 * (x * y + z * w), 1 - 2 * (x * x + z * z), 2 * (y * z - x * w)),
                new(2 * (x * z - y * w), 2 * (y * z + x * w), 1 - 2 * (x * x + y * y)));
            return new(turn * new Mat3(s[0] * Vec3.UnitX, s[1] * Vec3.UnitY, s[2] * Vec3.UnitZ), new(t[0], t[1], t[2]));
        }

        private static double[] Numbers(JsonElement list, int count)
        {
            double[] numbers = [.. list.EnumerateArray().Select(e => e.GetDouble())];
            return numbers.Length == count ? numbers : throw new FormatException();
        }
    }
}
