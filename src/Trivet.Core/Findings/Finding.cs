using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Findings;

/// <summary>The outcome of a finding, in the order of the ledger: what needs an engineer first comes first.</summary>
public enum Verdict
{
    FallsShort,
    Open,
    Tight,
    Holds,
}

/// <summary>Why a finding is open.</summary>
public enum OpenReason
{
    /// <summary>The description does not state something the rule needs.</summary>
    Missing,
    /// <summary>Not computed yet: only sampled, a proof is running, or was stopped.</summary>
    NotComputed,
    /// <summary>Computed, but neither proved nor refuted within the effort allowed.</summary>
    NotProved,
    /// <summary>The computation failed; the detail says how.</summary>
    Failed,
}

/// <summary>How a value is known. Only the first two may make a rule hold that needs proof.</summary>
public enum Assurance
{
    /// <summary>A closed form of exact inputs.</summary>
    Exact,
    /// <summary>Bounded rigorously over the whole volume; <see cref="Judged.Bound"/> carries the bound.</summary>
    Proved,
    /// <summary>The worst of a finite set of samples.</summary>
    Sampled,
    /// <summary>An assumption or a fit with its uncertainty.</summary>
    Estimated,
}

/// <summary>What a finding is about: the part of the description, and optionally a case within it.</summary>
/// <param name="Pointer">JSON pointer of the subject: <c>/stations/tray-left</c>.</param>
/// <param name="Case">A case within it, such as a chain id; empty when there is one only.</param>
public sealed record Subject(string Pointer, string Case = "");

/// <summary>The place in the cell where the worst value occurs.</summary>
/// <param name="P_C">Point (the tool centre point for reach) in the cell frame, metres.</param>
/// <param name="Rotary">Angle of the rotary axis there, radians; not a number where there is none.</param>
/// <param name="P_B">Platform reference point in the base frame, metres; not a number where no pose is meant.</param>
/// <param name="LinearAxis">Position of the axis that carries the robot, metres; zero where there is none.</param>
public sealed record Place(Vec3 P_C, double Rotary, Vec3 P_B, double LinearAxis = 0);

/// <summary>The limit a value is held against, with its own source: the method and the limit are two claims.</summary>
/// <param name="Lower">Smallest allowed value in the rule's unit, or minus infinity.</param>
/// <param name="Upper">Largest allowed value in the rule's unit, or plus infinity.</param>
/// <param name="Source">Source of the limit.</param>
public sealed record Limit(double Lower, double Upper, Source Source)
{
    public static Limit AtMost(double upper, Source source) => new(double.NegativeInfinity, upper, source);
    public static Limit AtLeast(double lower, Source source) => new(lower, double.PositiveInfinity, source);
    public static Limit Between(double lower, double upper, Source source) => new(lower, upper, source);
}

/// <summary>A single change that would help, as data; the sentence is made in the views.</summary>
/// <param name="Pointer">The field to change.</param>
/// <param name="From">Its value now, SI.</param>
/// <param name="To">Its value then, SI.</param>
/// <param name="MarginThen">The margin of this finding after the change (a fraction); not a number where not computed.</param>
/// <param name="WorstElsewhere">The worst margin that the change leaves in the other findings; not a number where not computed.</param>
public sealed record Advice(string Pointer, double From, double To, double MarginThen, double WorstElsewhere = double.NaN);

/// <summary>
/// A rule applied to a subject. Closed: <see cref="Judged"/>, <see cref="YesNo"/> and <see cref="Unjudged"/> are all there are.
/// Margin and verdict are computed from the rest and never stored, so they cannot contradict it.
/// </summary>
/// <param name="Rule">The rule.</param>
/// <param name="Subject">What it was applied to.</param>
/// <param name="Inputs">Pointers (or journal entry ids) of everything the finding depends on, sorted, without repeats.</param>
public abstract record Finding(Rule Rule, Subject Subject, ImmutableArray<string> Inputs)
{
    /// <summary>Stable id: the rule's id, the subject's pointer and case.</summary>
    public string Id => Subject.Case.Length == 0 ? $"{Rule.Id}:{Subject.Pointer}" : $"{Rule.Id}:{Subject.Pointer}:{Subject.Case}";

    /// <summary>Signed distance to the limit as a fraction; negative beyond it; not a number where there is none.</summary>
    public abstract double Margin { get; }

    public abstract Verdict Verdict { get; }

    /// <summary>Why the verdict is open; null when it is not.</summary>
    public abstract OpenReason? OpenBecause { get; }

    public ImmutableArray<Advice> Advice { get; init; } = [];

    /// <summary>Where in the cell the worst value occurs; null when the finding has no place.</summary>
    public Place? Worst { get; init; }

    /// <summary>When in a cycle the worst value occurs, seconds from its start; null when the finding is not about a moment.</summary>
    public double? WorstTime { get; init; }
}

/// <summary>A second value that is told beside the one judged.</summary>
/// <param name="Id">What it is; worded in the views.</param>
/// <param name="Value">In the rule's unit.</param>
public sealed record Aside(string Id, double Value);

/// <summary>A value held against a limit.</summary>
/// <param name="Value">The worst value attained at <see cref="Finding.Worst"/>, in the rule's unit.</param>
public sealed record Judged(Rule Rule, Subject Subject, ImmutableArray<string> Inputs, double Value, Limit Limit, Assurance Assurance)
    : Finding(Rule, Subject, Inputs)
{
    /// <summary>A guaranteed bound on the value over the whole subject (the upper one for at most, the lower for at least).
    /// Defaults to the value itself. The verdict rests on the bound, never on the display.</summary>
    public double Bound { get; init; } = Value;

    /// <summary>Standard uncertainty of the value, in the rule's unit; zero where exact.</summary>
    public double Uncertainty { get; init; }

    /// <summary>Told with the value and not judged; null where there is none.</summary>
    public Aside? Beside { get; init; }

    /// <summary>The margin that is guaranteed: that of the bound, and never more than the attained value leaves.</summary>
    public override double Margin => Math.Min(MarginOf(Bound), MarginAttained);

    /// <summary>The margin of the attained value, which the bound can only make smaller.</summary>
    public double MarginAttained => MarginOf(Value);

    public override Verdict Verdict => Decide().Verdict;

    public override OpenReason? OpenBecause => Decide().Because;

    private (Verdict Verdict, OpenReason? Because) Decide()
    {
        double attained = MarginAttained, guaranteed = Margin;
        if (!double.IsFinite(Value) || double.IsNaN(attained) || double.IsNaN(guaranteed) || !(Uncertainty >= 0)) return (Verdict.Open, OpenReason.Failed);
        if (attained < 0) return (Verdict.FallsShort, null);
        if (Rule.NeedsProof && Assurance is (Assurance.Sampled or Assurance.Estimated)) return (Verdict.Open, OpenReason.NotComputed);
        if (guaranteed < 0) return (Verdict.Open, OpenReason.NotProved);
        // Guard band: two standard uncertainties, about 95 % (JCGM 106 decision rule, from memory).
        return (guaranteed < Rule.ComfortBand || guaranteed < 2 * Uncertainty / ScaleOf() ? Verdict.Tight : Verdict.Holds, null);
    }

    private double ScaleOf() => Rule.Scale ?? Rule.Sense switch
    {
        Sense.AtMost => Limit.Upper,
        Sense.AtLeast => Limit.Lower,
        _ => (Limit.Upper - Limit.Lower) / 2,
    };

    private double MarginOf(double v)
    {
        double scale = ScaleOf();
        if (!(scale > 0)) return double.NaN;
        return Rule.Sense switch
        {
            Sense.AtMost => (Limit.Upper - v) / scale,
            Sense.AtLeast => (v - Limit.Lower) / scale,
            _ => Math.Min(v - Limit.Lower, Limit.Upper - v) / scale,
        };
    }
}

/// <summary>
/// A yes-or-no check with its evidence (a duplicate address); no invented number. Of a rule whose comfort band nothing exceeds, passing it is no more than tight: a
/// person confirms.
/// </summary>
/// <param name="Good">True when the check is passed.</param>
/// <param name="Evidence">The pointers or entries that show it.</param>
public sealed record YesNo(Rule Rule, Subject Subject, ImmutableArray<string> Inputs, bool Good, ImmutableArray<string> Evidence)
    : Finding(Rule, Subject, Inputs)
{
    public override double Margin => double.NaN;
    public override Verdict Verdict => !Good ? Verdict.FallsShort : double.IsPositiveInfinity(Rule.ComfortBand) ? Verdict.Tight : Verdict.Holds;
    public override OpenReason? OpenBecause => null;
}

/// <summary>A rule that could not be judged, with the reason.</summary>
/// <param name="Reason">Why it is open.</param>
/// <param name="Missing">The fields that are missing, for <see cref="OpenReason.Missing"/>.</param>
/// <param name="Detail">What happened, for the other reasons; null where the kind of openness says it all.</param>
public sealed record Unjudged(Rule Rule, Subject Subject, ImmutableArray<string> Inputs, OpenReason Reason, ImmutableArray<string> Missing, Reason? Detail = null)
    : Finding(Rule, Subject, Inputs)
{
    public override double Margin => double.NaN;
    public override Verdict Verdict => Verdict.Open;
    public override OpenReason? OpenBecause => Reason;
}
