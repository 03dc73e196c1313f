using Trivet.Adapters;
using Trivet.Bolting;
using Trivet.Cells;
using Trivet.Motion;
using Trivet.Procedures;

namespace Trivet.Assessment;

/// <summary>The procedure of a cell with the torques that its joints are calculated to have and the plates that it is designed to have.</summary>
public static class CellProcedure
{
    /// <param name="cell">As it was typed: its plates are laid in here, so that desk, floor and command line ask for the same mass. No step asks for a wait.</param>
    public static Procedure Of(Cell cell)
    {
        var plates = new FoundPlates();
        var planned = new Completion(plates, new FoundFrames()).Of(cell, compute: false, CancellationToken.None).Cell;
        return Procedure.Of(
            planned, [.. JointStage.Calculated(planned, plates).Select(j => new JointTorque(j.Result.Input.Id, j.Result.Torque, j.Result.Input.WrenchScatter, j.Result.Input.Points.Length, j.Reading.Inputs))]);
    }
}
