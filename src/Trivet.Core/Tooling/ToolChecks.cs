using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Tooling;

/// <summary>Holds the tool stack against what carries it, as far as no motion is needed.</summary>
public static class ToolChecks
{
    /// <summary>Difference of stack and tool centre point that rounding and play explain, metres. Common practice, no source.</summary>
    private const double LengthDifference = 0.001;

    public static StagePlan Of(Cell cell)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        var reading = new Reading();
        var tool = new Subject("/tool");
        if (cell.Tool.Parts.IsEmpty) return new([], [new(ToolRules.Described, tool, ToolReasons.NoParts)], []);

        var stack = ToolInputs.Read(cell, reading);
        foreach (var problem in stack.Problems)
            findings.Add(new Unjudged(ToolRules.Described, new(problem.Pointer), reading.Inputs, OpenReason.Failed, [], problem.Reason));
        foreach (var element in stack.Elements.Where(e => !e.Lacking.IsEmpty && stack.Problems.All(p => !p.Pointer.StartsWith(e.Pointer + "/", StringComparison.Ordinal))))
            findings.Add(new Unjudged(ToolRules.Described, new(element.Pointer), reading.Inputs, OpenReason.Missing, element.Lacking));

        Length(cell, stack, findings, coverage);
        var summing = new Reading();
        if (ToolSums.Of(cell, summing) is not { } sums)
        {
            ImmutableArray<string> waits = [.. summing.MissingFields.Concat(stack.Problems.Select(p => p.Pointer)).Distinct()];
            coverage.Add(new(ToolRules.Payload, tool, ToolReasons.WaitsFor.Naming(waits)));
            return new(findings.ToImmutable(), coverage.ToImmutable(), []);
        }

        Payload(cell, sums, summing, findings, coverage);
        Inertia(cell, sums, summing, findings, coverage);
        Turning(cell, sums, summing, findings, coverage);
        return new(findings.ToImmutable(), coverage.ToImmutable(), []);
    }

    private static void Length(Cell cell, ToolRead stack, ImmutableArray<Finding>.Builder findings, ImmutableArray<NotApplicable>.Builder coverage)
    {
        var subject = new Subject("/tool/tcpZ");
        var reading = new Reading();
        ToolInputs.Read(cell, reading);
        double tcp = reading.Or(cell.Tool.TcpZ, "/tool/tcpZ", double.NaN);
        if (double.IsNaN(tcp) || stack.Elements.Any(e => e.Height == 0 && cell.Tool.Parts[e.Id].Height is null))
        {
            coverage.Add(new(ToolRules.Length, subject, ToolReasons.NoHeights));
            return;
        }

        double ends = stack.Elements.Min(e => e.Top - e.Height);
        findings.Add(new Judged(
            ToolRules.Length, subject, reading.Inputs, Math.Abs(ends - tcp), Limit.AtMost(LengthDifference, new(SourceKind.CommonPractice, "")), Assurance.Exact));
    }

    private static void Payload(
        Cell cell, ToolSums sums, Reading summing, ImmutableArray<Finding>.Builder findings, ImmutableArray<NotApplicable>.Builder coverage)
    {
        Judge(ToolRules.Payload, new("/tool"), cell.Tool.LargestMass, "/tool/largestMass", sums.Heaviest.Body.Mass, summing, findings, coverage);
        double part = sums.Heaviest.Body.Mass - sums.Empty.Body.Mass;
        foreach (var element in sums.Stack.Elements.Where(e => cell.Tool.Parts[e.Id].LargestLoad is not null))
        {
            double hangs = part + sums.Stack.From(element).Sum(e => e.Body.Mass);
            Judge(ToolRules.Payload, new(element.Pointer), cell.Tool.Parts[element.Id].LargestLoad, element.Pointer + "/largestLoad", hangs, summing, findings, coverage);
        }
    }

    private static void Inertia(
        Cell cell, ToolSums sums, Reading summing, ImmutableArray<Finding>.Builder findings, ImmutableArray<NotApplicable>.Builder coverage)
    {
        var subject = new Subject("/tool");
        if (cell.Tool.LargestInertia is not null && !sums.WithoutInertia.IsEmpty)
        {
            coverage.Add(new(ToolRules.Inertia, subject, ToolReasons.InertiaUnknown.Naming(sums.WithoutInertia)));
            return;
        }
        Judge(ToolRules.Inertia, subject, cell.Tool.LargestInertia, "/tool/largestInertia", sums.Sums.Max(s => s.AtInterface.Row2.Z), summing, findings, coverage);
    }

    private static void Turning(
        Cell cell, ToolSums sums, Reading summing, ImmutableArray<Finding>.Builder findings, ImmutableArray<NotApplicable>.Builder coverage)
    {
        var subject = new Subject("/robot/rotary");
        ToolElement[] turning = [.. sums.Stack.Elements.Where(e => e.Turns)];
        if (turning.Length == 0)
        {
            coverage.Add(new(ToolRules.Turning, subject, ToolReasons.NoRotaryPart));
            return;
        }
        if (turning.Any(e => !e.Body.InertiaKnown))
        {
            coverage.Add(new(ToolRules.Turning, subject, ToolReasons.InertiaUnknown.Naming([.. turning.Where(e => !e.Body.InertiaKnown).Select(e => e.Pointer)])));
            return;
        }
        double about = turning.Sum(e => e.Body.About(Vec3.Zero).Row2.Z);
        Judge(ToolRules.Turning, subject, cell.Robot.Rotary.Inertia, "/robot/rotary/inertia", about, summing, findings, coverage);
    }

    /// <summary>A value against a limit that the description states; nothing to judge where it does not.</summary>
    private static void Judge(
        Rule rule, Subject subject, double? limit, string pointer, double value, Reading basis,
        ImmutableArray<Finding>.Builder findings, ImmutableArray<NotApplicable>.Builder coverage)
    {
        var reading = new Reading();
        reading.Used(basis);
        reading.Used(pointer, limit);
        if (limit is { } most) findings.Add(new Judged(rule, subject, reading.Inputs, value, Limit.AtMost(most, new(SourceKind.Cell, pointer)), Assurance.Exact));
        else coverage.Add(new(rule, subject, ToolReasons.NoLimit.Naming(pointer)));
    }
}
