using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Bolting;

/// <summary>Holds a joint against its limits.</summary>
public static class JointChecks
{
    /// <param name="loaded">Whether the load is known.</param>
    public static ImmutableArray<Finding> Of(JointResult joint, bool loaded, ImmutableArray<string> inputs)
    {
        var subject = new Subject(JointInputs.Pointer(joint.Input.Id));
        var vdi = new Source(SourceKind.FromMemory, "VDI-2230-1", "section 5.5");
        var findings = ImmutableArray.CreateBuilder<Finding>();
        Add(JointRules.Screw, joint.ScrewUse, 1, vdi);
        Add(JointRules.Pressure, joint.PressureUse, 1, vdi);
        Add(JointRules.Strip, joint.StripUse, 1, new(SourceKind.CommonPractice, ""));
        if (!double.IsNaN(joint.Input.SlotNutForce)) Add(JointRules.SlotNut, joint.LargestForce, joint.Input.SlotNutForce, new(SourceKind.Cell, subject.Pointer + "/slotNutForce"));
        if (loaded)
        {
            Add(JointRules.Separation, joint.Separation, 1, vdi);
            Add(JointRules.Slip, joint.Slip, 1, vdi, joint.SlipAt);
            Add(JointRules.Fatigue, joint.Fatigue, 1, vdi);
        }
        return findings.ToImmutable();

        void Add(Rule rule, double value, double limit, Source source, double at = double.NaN) => findings.Add(
            // Rounding of a share to a billionth decides nothing.
            new Judged(rule, subject, inputs, Math.Round(value, 9), Limit.AtMost(limit, source), Assurance.Sampled) { WorstTime = double.IsNaN(at) ? null : at });
    }
}
