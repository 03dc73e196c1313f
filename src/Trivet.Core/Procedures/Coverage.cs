using System.Collections.Immutable;
using Trivet.Faults;

namespace Trivet.Procedures;

/// <summary>Whether, where and when a procedure notices one fault.</summary>
/// <param name="Step">Id of the step by which it is more likely noticed than not; empty where none is.</param>
/// <param name="At">Energy of that step; null where it slips through.</param>
/// <param name="Probability">That it is noticed by the end.</param>
/// <param name="BeforeHarm">That it is noticed before the first step in which it can do harm that nothing keeps small; one where it can do none.</param>
public sealed record Noticed(FaultCase Case, string Step, EnergyLevel? At, double Probability, double BeforeHarm)
{
    public bool SlipsThrough => At is null;

    /// <summary>Noticed with no motor energised.</summary>
    public bool BeforePower => At is EnergyLevel.Isolated or EnergyLevel.ControlSupplyOnly;
}

/// <summary>A probe that no step does, and the weight of the missed faults it would show.</summary>
/// <param name="Weight">Sum over those faults of expected number in a thousand times the probability to be shown.</param>
public sealed record Addition(Probe Probe, double Weight, ImmutableArray<FaultCase> Shows);

/// <summary>Which single faults a procedure would notice, and which would slip through.</summary>
public sealed record Coverage(ImmutableArray<Noticed> Faults)
{
    public IEnumerable<Noticed> Missed => Faults.Where(f => f.SlipsThrough);

    /// <summary>Odds from which on a fault counts as noticed: more likely than not.</summary>
    public const double Enough = 0.5;

    /// <param name="steps">In the order in which they are done.</param>
    public static Coverage Of(ImmutableArray<Step> steps, ImmutableArray<FaultCase> cases) => new([.. cases.Select(c => Find(steps, c))]);

    /// <summary>The one probe more that would catch most of what slips through; null where nothing does, or nothing would help.</summary>
    public Addition? Best => Enum.GetValues<Probe>()
        .Select(p => (Probe: p, Shown: Missed.Where(m => m.Case.Fault.ShownBy(p) >= Enough).Select(m => m.Case).ToImmutableArray()))
        .Select(p => new Addition(p.Probe, p.Shown.Sum(c => c.Fault.Weight * c.Fault.ShownBy(p.Probe)), p.Shown))
        .Where(a => a.Weight > 0).MaxBy(a => a.Weight);

    /// <summary>
    /// A fault is missed by the end only where every probe that could show it missed it. A probe repeated shows no more than once: who overlooked a thing overlooks
    /// it again.
    /// </summary>
    private static Noticed Find(ImmutableArray<Step> steps, FaultCase fault)
    {
        double missed = 1, beforeHarm = double.NaN;
        Step? by = null;
        var done = new HashSet<Probe>();
        foreach (var step in steps)
        {
            if (!Concerns(step, fault)) continue;
            // What a step notices of a fault that it itself brings to harm comes too late.
            if (double.IsNaN(beforeHarm) && !step.Bounded && fault.Fault.HarmfulFrom is { } harm && step.Probes.Contains(harm)) beforeHarm = 1 - missed;
            foreach (var probe in step.Probes)
                if (done.Add(probe)) missed *= 1 - fault.Fault.ShownBy(probe);
            if (by is null && 1 - missed >= Enough) by = step;
        }
        if (double.IsNaN(beforeHarm)) beforeHarm = fault.Fault.HarmfulFrom is null ? 1 : 1 - missed;
        return new(fault, by?.Id ?? "", by?.Energy, 1 - missed, beforeHarm);
    }

    /// <summary>A step that is about one axis, module or belt says nothing of a fault in another; one that is about none of them looks at all.</summary>
    private static bool Concerns(Step step, FaultCase fault)
    {
        if (fault.Parts.IsEmpty) return true;
        string at = step.Subject.Pointer;
        return fault.Parts.Contains(at) || !OfOneThing(at);
    }

    private static bool OfOneThing(string pointer) =>
        pointer is "/robot/rotary" or "/robot/linearAxis" || Single.Any(s => pointer.StartsWith(s, StringComparison.Ordinal) && pointer.IndexOf('/', s.Length) < 0);

    private static readonly ImmutableArray<string> Single = ["/robot/chains/", "/cabinet/modules/", "/stations/", "/cables/", "/io/switches/"];
}
