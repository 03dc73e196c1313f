using System.Collections.Immutable;
using Trivet.Adapters;
using Trivet.Bolting;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Procedures;

namespace Trivet.Assessment;

/// <summary>The procedure of a cell with the torques that its joints are calculated to have.</summary>
public static class CellProcedure
{
    public static Procedure Of(Cell cell)
    {
        var cycles = TimedCycle.Of(cell);
        var plates = new FoundPlates();
        var torques = ImmutableArray.CreateBuilder<JointTorque>();
        foreach (var (id, _) in cell.Joints.InOrder())
        {
            var (reading, wrong) = (new Reading(), new List<Contradiction>());
            if (JointInputs.Read(cell, id, plates, reading, wrong) is not { } input) continue;
            var result = JointResult.Solve(input, JointLoads.Of(cell, id, cycles, reading, wrong)?.Invoke());
            torques.Add(new(id, result.Torque, input.WrenchScatter, input.Points.Length, reading.Inputs));
        }
        return Procedure.Of(cell, torques.ToImmutable());
    }
}
