using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Trivet.Numerics;

namespace Trivet.Files.Meshes;

/// <summary>
/// Reads stereolithography files (STL), binary or text, as they are commonly written: 80 bytes of head, the number of triangles as 32-bit little-endian,
/// and for each a normal, three corners as 32-bit floats and two bytes; or <c>facet … vertex x y z … endfacet</c>. Normals are not looked at: the order
/// of the corners says which side is outside. The format names no unit.
/// </summary>
internal static class StlFile
{
    private const int Head = 84, Triangle = 50;

    public static MeshRead Read(ReadOnlySpan<byte> bytes, double unit)
    {
        // Binary files may begin with "solid" as well; their length is what tells them.
        if (bytes.Length >= Head && Head + Triangle * (long)BinaryPrimitives.ReadUInt32LittleEndian(bytes[80..]) == bytes.Length) return Binary(bytes, unit);
        if (bytes.TrimStart(" \t\r\n"u8).StartsWith("solid"u8)) return Text(bytes, unit);
        return bytes.Length >= Head
            ? MeshRead.Refused("its length is not that of the triangles it announces: it is cut off, or no STL file", "write it again")
            : MeshRead.Refused("it is too short for an STL file", "write it again");
    }

    private static MeshRead Binary(ReadOnlySpan<byte> bytes, double unit)
    {
        int count = (bytes.Length - Head) / Triangle;
        if (count > MeshRead.MostTriangles) return MeshRead.TooMany;
        var corners = ImmutableArray.CreateBuilder<Vec3>(3 * count);
        for (int i = 0; i < count; i++)
        {
            for (int k = 0; k < 3; k++)
            {
                var at = bytes[(Head + Triangle * i + 12 + 12 * k)..];
                var corner = unit * new Vec3(
                    BinaryPrimitives.ReadSingleLittleEndian(at), BinaryPrimitives.ReadSingleLittleEndian(at[4..]), BinaryPrimitives.ReadSingleLittleEndian(at[8..]));
                if (!corner.IsFinite) return MeshRead.Refused($"triangle {i + 1} has a corner that is not a number", "write it again");
                corners.Add(corner);
            }
        }

        return new(corners.MoveToImmutable());
    }

    private static MeshRead Text(ReadOnlySpan<byte> bytes, double unit)
    {
        var corners = ImmutableArray.CreateBuilder<Vec3>();
        int line = 0, inFacet = -1;
        foreach (var range in bytes.Split((byte)'\n'))
        {
            line++;
            string[] words = Encoding.UTF8.GetString(bytes[range]).Split((char[])[' ', '\t', '\r'], StringSplitOptions.RemoveEmptyEntries);
            if (words.Length == 0) continue;
            switch (words[0].ToLowerInvariant())
            {
                case "facet":
                    inFacet = 0;
                    break;
                case "vertex":
                    if (inFacet is < 0 or > 2 || words.Length != 4 || !Number(words[1], out double x) || !Number(words[2], out double y) || !Number(words[3], out double z))
                        return MeshRead.Refused($"line {line} is no corner of a triangle", "write \"vertex x y z\", three in each facet");
                    corners.Add(unit * new Vec3(x, y, z));
                    inFacet++;
                    break;
                case "endfacet":
                    if (inFacet != 3) return MeshRead.Refused($"the facet that ends in line {line} does not have three corners", "write it as triangles");
                    inFacet = -1;
                    break;
                case "solid" or "endsolid" or "outer" or "endloop":
                    break;
                default:
                    return MeshRead.Refused($"line {line} is no line of an STL file", "write it again");
            }
            if (corners.Count > 3 * MeshRead.MostTriangles) return MeshRead.TooMany;
        }

        return inFacet >= 0 ? MeshRead.Refused("it ends within a facet: it is cut off", "write it again") : new(corners.ToImmutable());
    }

    private static bool Number(string word, out double value) =>
        double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
}
