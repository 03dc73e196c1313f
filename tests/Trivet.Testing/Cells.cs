using CsCheck;
using Trivet.Cells;
using Trivet.Files;

namespace Trivet.Testing;

/// <summary>Random cells for property tests: any mixture of fields stated and not, in every collection up to three entries.</summary>
public static class RandomCells
{
    private static readonly Gen<string> Texts = Gen.OneOf(
        Gen.String[Gen.Char[' ', '~'], 1, 20].Where(t => t.Trim().Length > 0),
        Gen.OneOf("jar lid", "Ünïcode ✓ 𝄞", "quote \" and \\ slash", "line\nbreak\ttab", "{ \"a\": 1 } // no comment"));

    private static readonly Gen<string> Ids = Gen.Select(Gen.Char['a', 'z'], Gen.String[Gen.OneOf(Gen.Char['a', 'z'], Gen.Char['0', '9'], Gen.Const('-')), 0, 8], (a, b) => a + b);

    /// <summary>Finite values over many orders of magnitude, and the round ones that people type.</summary>
    public static readonly Gen<double> Values = Gen.OneOf(
        Gen.Double[-10, 10],
        Gen.Int[-5000, 5000].Select(i => i / 1000.0),
        Gen.Select(Gen.Double[-1, 1], Gen.Int[-12, 12], (m, e) => m * Math.Pow(10, e)),
        Gen.Const(0.0));

    /// <summary>Where the collections are, outermost first.</summary>
    private static readonly string[] Collections =
        ["/brief/parts", "/brief/requirements", "/brief/openQuestions", "/robot/chains", "/controller/axes", "/tool/parts", "/frame/members", "/stations", "/cabinet/modules", "/cables", "/cabling/devices", "/cabling/ways", "/io/banks", "/io/signals", "/io/switches",
            "/pneumatics/users", "/pneumatics/hoses", "/handling/lifts", "/guarding/devices", "/guarding/fences", "/guarding/gaps", "/partsList"];

    public static readonly Gen<Cell> Any =
        from railDelta in Gen.Bool
        from entries in Gen.Select(Gen.Int[0, Collections.Length - 1], Ids).Array[0, 12]
        from seed in Gen.Int
        from density in Gen.Int[0, 10]
        select Fill(railDelta, entries, seed, density);

    private static Cell Fill(bool railDelta, (int Collection, string Id)[] entries, int seed, int density)
    {
        var cell = Cell.Empty with { Robot = new Robot { Family = railDelta ? RobotFamily.RailDelta : RobotFamily.CrankDelta } };
        foreach (var (collection, id) in entries)
        {
            if (CellFields.Add(cell, $"{Collections[collection]}/{id}").Cell is { } larger) cell = larger;
        }

        var random = new Random(seed);
        foreach (var field in CellFields.Below(cell, ""))
        {
            if (field.Pointer == "/robot/family" || random.Next(10) >= density) continue;
            cell = field.Kind switch
            {
                FieldKind.Quantity => CellFields.SetSi(cell, field.Pointer, Draw(Values, random)),
                FieldKind.Whole => Accepted(CellFields.Set(cell, field.Pointer, random.Next(-3, 300).ToString(System.Globalization.CultureInfo.InvariantCulture))),
                FieldKind.Text when field.Pointer.EndsWith("/drives", StringComparison.Ordinal) && random.Next(2) == 0 =>
                    Accepted(CellFields.Set(cell, field.Pointer, random.Next(2) == 0 ? "rotary" : "linear")),
                FieldKind.Text => Accepted(CellFields.Set(cell, field.Pointer, Draw(Texts, random))),
                _ => Accepted(CellFields.Set(cell, field.Pointer, field.Choices[random.Next(field.Choices.Length)])),
            };
        }

        return cell;
    }

    private static T Draw<T>(Gen<T> gen, Random random) => gen.Generate(new PCG((uint)random.Next(1, 1000), (ulong)random.NextInt64()), null, out _);

    private static Cell Accepted(CellRead read) =>
        read.Cell ?? throw new InvalidOperationException($"{read.Errors[0].Pointer}: {read.Errors[0].Problem}");
}
