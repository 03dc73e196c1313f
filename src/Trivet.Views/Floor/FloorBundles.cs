using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.BringUp;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Floor;
using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Views.Floor;

/// <summary>Makes the bundle of a cell: its measuring steps in words, with the drawings they are shown on.</summary>
public static class FloorBundles
{
    private const string Plan = "plan", Elevation = "elevation";

    // The hazards and the order of making safe are common practice of the trade, no source; the local rules decide.
    private const string AtRest = "Motor supply isolated and locked off, and every chain held up or on its lower stop, before you reach into the cell. " +
        "A brake is not a prop. The local rules and the person responsible decide.";

    private const string AtHeight = AtRest + " Use a stand made for the height; two people for a tape over two metres.";

    /// <param name="cellId">Id of the cell in its job.</param>
    public static FloorBundle Of(string cellId, Assessed assessed)
    {
        var cell = assessed.Cell;
        var pictures = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        pictures[Plan] = CellDrawings.Plan(assessed).Svg;
        pictures[Elevation] = CellDrawings.Elevation(assessed).Svg;
        return new FloorBundle(cellId, cell.Name ?? cellId, CellFile.Hash(cell),
            [.. MeasuringSteps.Of(cell).Select(m => Step(m, cell))], pictures.ToImmutable());
    }

    private static FloorStep Step(Measuring m, Cell cell)
    {
        string where = m.What == MeasuredLength.ChainDistance ? m.Subject.Case : Fields.Words(cell, m.Subject.Pointer);
        return m.What switch
        {
            MeasuredLength.MountHeight => new(m, "Height of the robot's mounting plane",
                "From the floor to the plane the robot is bolted to, plumb below its middle.", AtHeight, Elevation),
            MeasuredLength.ChainDistance => new(m, $"Distance of chains {where}",
                "Between the middles of the two upper joints, with both chains at the upper end of travel. Measure from edge to edge and subtract one joint's width.", AtHeight, Plan),
            MeasuredLength.RodLength => new(m, $"Rod length, {where}",
                "From ball centre to ball centre, both rods of the pair. Type the one that is further from the plan. Best before the rods are fitted.", AtRest, ""),
            MeasuredLength.StationHeight => new(m, $"Height at {where}",
                "From the floor to the place where the tool picks or places.", AtRest, Elevation),
            MeasuredLength.TrayAlongColumns => new(m, $"Pockets of {where} along the columns",
                "From the first pocket to the last one of a row of pockets along x: left edge to left edge.", AtRest, Plan),
            _ => new(m, $"Pockets of {where} along the rows",
                "From the first pocket to the last one of a row of pockets along y: near edge to near edge.", AtRest, Plan),
        };
    }
}
