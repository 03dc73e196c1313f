using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Testing;

/// <summary>Adapter plates for tests, all invented.</summary>
public static class AdapterCells
{
    /// <summary>A flange of 50 mm with threads above, a part passed by its own screws below: one plate does it.</summary>
    public static Cell Simple { get; } = Cell.Empty with
    {
        Depth = Depth.Build,
        Interfaces = Cell.Empty.Interfaces.Add("gripper", new()
        {
            Shape = PatternShape.Rectangle, Width = 0.036, Depth = 0.026, Thread = "M4", Tapped = false, Grip = 0.006, Material = "aluminium", FaceWidth = 0.055, FaceDepth = 0.045,
        }),
        Plates = Cell.Empty.Plates.Add("adapter", new() { Above = "ISO 9409-1-50-4-M6", Below = "gripper", Material = "aluminium" }),
    };

    /// <summary>Both parts have threads and both faces cover all screws: whichever part comes second, its screws are out of reach.</summary>
    public static Cell Covered { get; } = Simple with
    {
        Interfaces = Simple.Interfaces.SetItem("gripper", new()
        {
            Shape = PatternShape.Circle, Circle = 0.040, Holes = 4, Thread = "M5", Tapped = true, ThreadDepth = 0.010, Material = "steel", FaceDiameter = 0.060,
        }),
    };

    public static AdapterInput Input(Cell cell, string id = "adapter")
    {
        var reading = new Reading();
        var wrong = new List<Contradiction>();
        return AdapterInput.Read(cell, id, reading, wrong)
            ?? throw new InvalidOperationException($"missing {string.Join(", ", reading.MissingFields)}, wrong {string.Join(", ", wrong.Select(w => w.Pointer))}");
    }

    public static AdapterResult Solve(Cell cell) => PlateSearch.Solve(Input(cell));

    public static Cell With(Cell cell, Func<PlatePlan, PlatePlan> change) => cell with { Plates = cell.Plates.SetItem("adapter", change(cell.Plates["adapter"])) };

    public static Cell WithInterface(Cell cell, Func<Interface, Interface> change) =>
        cell with { Interfaces = cell.Interfaces.SetItem("gripper", change(cell.Interfaces["gripper"])) };
}
