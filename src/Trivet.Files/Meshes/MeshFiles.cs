using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Trivet.Cells;
using Trivet.Numerics;

namespace Trivet.Files.Meshes;

/// <summary>
/// Reads the mesh files that a cell names, and writes what they say into the description: volume, centre and inertia. The revision then stands by itself,
/// wherever it goes. A surface that is open, turned over in places, inverted or flat is refused with what is wrong.
/// </summary>
public static class MeshFiles
{
    /// <summary>Larger files are refused unread.</summary>
    public const long LargestSize = 256L * 1024 * 1024;

    private const double UsualUnit = 0.001;

    /// <summary>The cell with what its mesh files say. A file that is not there is an error unless the description already holds what was read from it.</summary>
    /// <param name="folder">That paths are relative to.</param>
    /// <param name="fileName">Of the cell, for errors.</param>
    /// <param name="utf8">The cell's text, to tell the line of an error; may be empty.</param>
    public static CellRead Fill(Cell cell, string folder, string fileName, ReadOnlySpan<byte> utf8)
    {
        var errors = ImmutableArray.CreateBuilder<FileError>();
        foreach (var (id, part) in cell.Tool.Parts.InOrder())
        {
            if (part.Shape != SolidKind.Mesh || string.IsNullOrWhiteSpace(part.Mesh.File)) continue;
            string pointer = $"/tool/parts/{id}/mesh/file", path = Path.Combine(folder, part.Mesh.File);
            if (!File.Exists(path) && part.Mesh.Volume is not null) continue;
            var read = Read(path, part.Mesh.Unit ?? UsualUnit);
            if (read.Mesh is { } mesh) cell = cell with { Tool = cell.Tool with { Parts = cell.Tool.Parts.SetItem(id, part with { Mesh = Filled(part.Mesh, mesh) }) } };
            else
            {
                var (line, column) = PlaceOf(utf8, pointer);
                errors.Add(new(fileName, line, column, pointer, $"{part.Mesh.File}: {read.Problem}", read.Remedy));
            }
        }

        return errors.Count > 0 ? new(null, errors.ToImmutable()) : new(cell, []);
    }

    /// <summary>Mass properties for density 1 of the body in a file, or what is wrong with it.</summary>
    /// <param name="unit">Length of one unit of an STL file, metres.</param>
    public static (MassProperties? Mesh, string Problem, string Remedy) Read(string path, double unit)
    {
        MeshRead read;
        try
        {
            var file = new FileInfo(path);
            if (!file.Exists) return (null, "there is no such file", "paths are from the folder of the cell file");
            if (file.Length > LargestSize) return (null, "it is larger than 256 MB", "write it coarser: mass properties need no fine surface");
            if (!(unit > 0 && double.IsFinite(unit))) return (null, "the length of its unit is not above zero", "state the unit as \"1 mm\" or \"1 in\"");
            byte[] bytes = File.ReadAllBytes(path);
            read = Path.GetExtension(path).ToLowerInvariant() switch
            {
                ".stl" => StlFile.Read(bytes, unit),
                ".gltf" or ".glb" => GltfFile.Read(bytes, name => Beside(path, name)),
                _ => MeshRead.Refused("its name does not say what it is", "name an .stl, .gltf or .glb file"),
            };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return (null, "it can not be read", "check that you may read it and that no other program holds it");
        }

        if (read.Problem is { } problem) return (null, problem, read.Remedy);
        var report = ClosedMesh.Of(read.Corners);
        return report.Fault switch
        {
            MeshFault.None => (report.Body, "", ""),
            MeshFault.Empty => (null, "it has no triangle", "write the body's surface into it"),
            MeshFault.Open => (null,
                $"the surface is open: {Edges(report.BadEdges)} with a triangle on one side only, the first near {Place(report.At)}", "close the surface and write it again"),
            MeshFault.Flipped => (null,
                $"neighbouring triangles face opposite ways along {Edges(report.BadEdges)}, the first near {Place(report.At)}", "make all triangles face outward and write it again"),
            MeshFault.Inverted => (null, "the surface is inverted: its triangles face inward", "turn all triangles over and write it again"),
            _ => (null, "the surface holds no volume", "write a body, not a sheet"),
        };
    }

    private static MeshSolid Filled(MeshSolid mesh, MassProperties body)
    {
        var each = 1 / body.Mass * body.Inertia;
        return mesh with
        {
            Volume = body.Mass,
            CentreX = body.Centre.X,
            CentreY = body.Centre.Y,
            CentreZ = body.Centre.Z,
            GyrationX = each.Row0.X,
            GyrationY = each.Row1.Y,
            GyrationZ = each.Row2.Z,
            ProductXY = -each.Row0.Y,
            ProductYZ = -each.Row1.Z,
            ProductZX = -each.Row2.X,
        };
    }

    private static byte[]? Beside(string path, string name)
    {
        var file = new FileInfo(Path.Combine(Path.GetDirectoryName(path) ?? "", name));
        return file.Exists && file.Length <= LargestSize ? File.ReadAllBytes(file.FullName) : null;
    }

    private static string Edges(int count) => count == 1 ? "1 edge" : string.Create(CultureInfo.InvariantCulture, $"{count} edges");

    private static string Place(Vec3 at) => string.Create(CultureInfo.InvariantCulture, $"({1000 * at.X:0.#}, {1000 * at.Y:0.#}, {1000 * at.Z:0.#}) mm");

    /// <summary>Line and column of a value in the cell's text; 0 where it is not found.</summary>
    private static (int Line, int Column) PlaceOf(ReadOnlySpan<byte> utf8, string pointer)
    {
        if (utf8.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF])) utf8 = utf8[3..];
        var reader = new Utf8JsonReader(utf8, new JsonReaderOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        var path = new Stack<string>();
        string name = "";
        try
        {
            while (reader.Read())
            {
                switch (reader.TokenType)
                {
                    case JsonTokenType.PropertyName:
                        name = reader.GetString() ?? "";
                        break;
                    case JsonTokenType.StartObject:
                        path.Push(name);
                        break;
                    case JsonTokenType.EndObject:
                        path.Pop();
                        break;
                    default:
                        if (string.Join('/', path.Reverse()) + "/" + name != pointer) break;
                        int at = (int)reader.TokenStartIndex, start = utf8[..at].LastIndexOf((byte)'\n') + 1;
                        return (utf8[..at].Count((byte)'\n') + 1, Encoding.UTF8.GetCharCount(utf8[start..at]) + 1);
                }
            }
        }
        catch (JsonException)
        {
            // It was read once before; what can not be placed has no line.
        }

        return (0, 0);
    }
}
