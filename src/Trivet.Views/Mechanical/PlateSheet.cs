using System.Collections.Immutable;
using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Views.Words;

namespace Trivet.Views.Mechanical;

/// <summary>One clocking that works.</summary>
/// <param name="Clocking">Radians; the others metres and kilograms. A key room that is infinite means that nothing is in the way.</param>
public sealed record ClockingRow(double Clocking, double Thickness, double Mass, double Wall, double KeyRoom, PlateFace FirstFitted)
{
    public ImmutableArray<string> Shown { get; init; } = [];
}

/// <summary>One plate of the answer with what its papers are called.</summary>
/// <param name="FileName">Without its ending.</param>
public sealed record PlatePiece(string FileName, PlateTitle Title, AdapterPlate Plate);

/// <summary>What the search for a plate came to, in finished texts.</summary>
/// <param name="Says">How many clockings work, or what forbids a single plate.</param>
/// <param name="Facts">Mass, size and stiffness of the best.</param>
public sealed record PlateSheet(
    string Id, string Title, string Says, ImmutableArray<ClockingRow> Rows, ImmutableArray<PlatePiece> Pieces, ImmutableArray<(string What, string Shown)> Facts, bool Works)
{
    /// <param name="made">Date for the title block.</param>
    public static PlateSheet Of(Cell cell, AdapterResult result, string revision, string made, Locale? locale = null)
    {
        var where = locale ?? Locale.English;
        var words = where.Language.Plate;
        string id = result.Input.Id, name = cell.Plates[id].Name ?? id, cellName = cell.Name ?? where.Language.UnnamedCell;
        var plan = cell.Plates[id];
        bool works = !result.Chosen.IsEmpty;
        string says = result.Works.IsEmpty
            ? Locale.Fill(words.NoneWorks, ("rules", Fields.List(result.Forbids.Select(r => Sentences.RuleNoun(r, where)), where)))
                + " " + (result.Stack.IsEmpty ? words.NoStack : result.Input.Pieces == 2 ? "" : words.StackFound)
            : Locale.Fill(words.Works, ("count", result.Works.Length.ToString(where.Culture)));
        // Where one plate can't do it the stack is shown, for the engineer to take or to leave.
        var plates = works ? result.Chosen : result.Stack;
        ImmutableArray<PlatePiece> pieces = [.. plates.Select((p, i) =>
        {
            string piece = plates.Length == 1 ? "" : i == 0 ? words.Upper : words.Lower;
            return new PlatePiece(
                plates.Length == 1 ? id : $"{id}-{(i == 0 ? "upper" : "lower")}", new(plates.Length == 1 ? name : $"{name}, {piece}", piece, cellName, revision, made)
                {
                    Owner = plan.Owner ?? "", Number = plan.Number ?? $"{cellName} / {id}", Creator = plan.Creator ?? "", ApprovedBy = plan.ApprovedBy ?? "", Sheet = $"{i + 1}/{plates.Length}",
                },
                p);
        })];
        return new(id, name, says.Trim(), [.. result.Works.Select(p => Row(p, words, where))], pieces, [.. pieces.SelectMany(p => FactsOf(p, plates.Length > 1, words, where))], works);
    }

    private static ClockingRow Row(AdapterPlate p, PlateWords words, Locale where) => new(p.Clocking, p.Thickness, p.Mass, p.Wall, p.KeyRoom, p.FirstFitted)
    {
        Shown =
        [
            $"{Numbers.Plain(p.Clocking * 180 / Math.PI, 1, where)}°", HoleCallouts.Millimetres(p.Thickness, where) + " mm", Numbers.Quantity(p.Mass, "kg", where),
            HoleCallouts.Millimetres(p.Wall, where) + " mm", double.IsFinite(p.KeyRoom) ? HoleCallouts.Millimetres(p.KeyRoom, where) + " mm" : words.KeyFree, words.Faces[(int)p.FirstFitted],
        ],
    };

    private static IEnumerable<(string, string)> FactsOf(PlatePiece piece, bool several, PlateWords words, Locale where)
    {
        var p = piece.Plate;
        var (least, most) = p.Outline.Box;
        string of = several ? piece.Title.Piece + ", " : "";
        string Mm(double v) => HoleCallouts.Millimetres(v, where);
        yield return (of + words.OutlineSize, $"{Mm(most.X - least.X)} × {Mm(most.Y - least.Y)} × {Mm(p.Thickness)} mm");
        yield return (of + words.Mass, Numbers.Quantity(p.Mass, "kg", where));
        yield return (of + words.Axial, double.IsFinite(p.AxialStiffness) ? Numbers.Rough(p.AxialStiffness, "N/m", where) : words.Straight);
        yield return (of + words.Tilt, double.IsFinite(p.TiltStiffness) ? Numbers.Rough(p.TiltStiffness, "N m/rad", where) : words.Straight);
    }

    public static ImmutableArray<string> Heads(Locale where)
    {
        var w = where.Language.Plate;
        return [w.HeadClocking, w.Thickness, w.Mass, w.HeadWall, w.HeadKey, w.HeadFirst];
    }
}
