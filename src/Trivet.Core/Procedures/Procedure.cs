using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Procedures;

/// <summary>The torque of one joint as it was calculated elsewhere.</summary>
/// <param name="Torque">Newton metres.</param>
/// <param name="Scatter">Of the wrench either way, as a fraction.</param>
/// <param name="Screws">How many.</param>
/// <param name="Inputs">Fields it rests on.</param>
public sealed record JointTorque(string Joint, double Torque, double Scatter, int Screws, ImmutableArray<string> Inputs);

/// <summary>A number that a step needs and the description does not give.</summary>
/// <param name="Step">Id of the step.</param>
/// <param name="Fields">Pointers to be stated.</param>
public sealed record Gap(string Step, ImmutableArray<string> Fields);

/// <summary>
/// From a pile of parts to a robot ready for its programme: the steps of this cell, in an order in which each stands behind those it needs. Computed from the
/// cell alone; the order is a graph (<see cref="Step.After"/>), of which the list is one way through.
/// </summary>
/// <param name="Gaps">What steps need and the description leaves open; the step is there all the same.</param>
public sealed record Procedure(ImmutableArray<Step> Steps, ImmutableArray<Gap> Gaps)
{
    /// <param name="torques">Joints as calculated; a joint that is not among them is a step with its torque open.</param>
    public static Procedure Of(Cell cell, ImmutableArray<JointTorque> torques)
    {
        var steps = new StepList(cell, torques);
        Shop.Add(steps);
        Erecting.Add(steps);
        Connecting.Add(steps);
        BeforePower.Add(steps);
        ControlSupply.Add(steps);
        Identifying.Add(steps);
        Completing.Add(steps);
        Proving.Add(steps);
        return new(steps.Done(), steps.Gaps);
    }

    /// <summary>Every field that any step depends on, sorted.</summary>
    public ImmutableArray<string> Inputs => [.. Steps.SelectMany(s => s.Inputs).Distinct().Order(StringComparer.Ordinal)];
}
