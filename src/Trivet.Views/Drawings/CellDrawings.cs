using Trivet.Assessment;
using Trivet.Findings;

namespace Trivet.Views.Drawings;

/// <summary>The drawings of a cell.</summary>
public static class CellDrawings
{
    /// <summary>Plan (seen from above) with dimensions, frame, robot, stations; the worst point of the finding marked when given.</summary>
    public static Drawing Plan(Assessed cell, Finding? marked = null) => throw new NotImplementedException();

    /// <summary>Elevation (seen along cell y) with dimensions.</summary>
    public static Drawing Elevation(Assessed cell, Finding? marked = null) => throw new NotImplementedException();

    /// <summary>Travel and dexterity over one working plane at a height of the cell frame: contours, limits, stations.</summary>
    public static Drawing WorkingPlane(Assessed cell, double z_C, PlaneQuantity quantity) => throw new NotImplementedException();
}

public enum PlaneQuantity
{
    Travel,
    Dexterity,
}
