using Trivet.Adapters;
using Trivet.Bolting;
using Trivet.Cells;
using Trivet.Motion;
using Trivet.Procedures;
using Trivet.Stopping;

namespace Trivet.Assessment;

/// <summary>The procedure of a cell, and how it is made safe, with the torques that its joints are calculated to have and the plates that it is designed to have.</summary>
public static class CellProcedure
{
    /// <param name="cell">As it was typed: its plates are laid in here, so that desk, floor and command line ask for the same mass. No step asks for a wait.</param>
    public static Procedure Of(Cell cell)
    {
        var (planned, plates) = Planned(cell);
        return Procedure.Of(
            planned, [.. JointStage.Calculated(planned, plates).Select(j => new JointTorque(j.Result.Input.Id, j.Result.Torque, j.Result.Input.WrenchScatter, j.Result.Input.Points.Length, j.Reading.Inputs))]);
    }

    /// <summary>How the cell is made safe, with the masses of its designed plates.</summary>
    public static MakingSafe SafeOf(Cell cell) => MakingSafe.Of(Planned(cell).Cell);

    private static (Cell Cell, FoundPlates Plates) Planned(Cell cell)
    {
        var plates = new FoundPlates();
        return (new Completion(plates, new FoundFrames()).Of(cell, compute: false, CancellationToken.None).Cell, plates);
    }
}
