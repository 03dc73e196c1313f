using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Frames;

/// <summary>Holds what a frame does against what it must keep.</summary>
public static class FrameChecks
{
    /// <summary>Safety against overturning where none is stated. Common practice, no source; local rules may ask for more.</summary>
    public const double UsualOverturningSafety = 1.5;

    private const string Limits = "/frame/limits/";

    /// <summary>What the frame does by itself.</summary>
    /// <param name="inputs">Everything that the study was read from.</param>
    public static ImmutableArray<Finding> Still(FrameStudy study, CellFrame frame, ImmutableArray<string> inputs)
    {
        var subject = new Subject("/frame");
        if (Broken(study, inputs) is { } broken) return [broken];
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var limits = frame.Limits;
        if (limits.LowestFrequency is { } lowest)
            findings.Add(new Judged(FrameRules.Frequency, subject, With("lowestFrequency"), study.Band(0).Low, Limit.AtLeast(lowest, Stated("lowestFrequency")), Assurance.Estimated));
        if (study.Mesh.Mount is not null && (limits.LargestSag ?? limits.LargestTilt) is not null)
        {
            MountMotion[] down = [.. study.SampledJoints.Select(k => study.At(k)).Select(s => s.MountOf(s.UnderWeight))];
            if (limits.LargestSag is { } sag)
                findings.Add(new Judged(FrameRules.Sag, subject, With("largestSag"), down.Max(m => -m.Moved.Z), Limit.AtMost(sag, Stated("largestSag")), Assurance.Sampled));
            if (limits.LargestTilt is { } tilt)
                findings.Add(new Judged(FrameRules.Tilt, subject, With("largestTilt"), down.Max(TiltOf), Limit.AtMost(tilt, Stated("largestTilt")), Assurance.Sampled));
        }

        bool together = study.Measurements.IsEmpty || study.Measurements.Max(m => m.Left?.From ?? 0) <= study.Measurements.Min(m => m.Left?.To ?? double.PositiveInfinity);
        foreach (var one in study.Measurements)
            findings.Add(new YesNo(FrameRules.Measured, new(one.Pointer), Sorted(inputs, one.Pointer), one.Left is not null && together, [one.Pointer]));
        return findings.ToImmutable();

        ImmutableArray<string> With(string limit) => Sorted(inputs, Limits + limit);
    }

    /// <summary>What the frame does under a motion that repeats.</summary>
    /// <param name="joints">Stiffnesses at which what has no order is sampled.</param>
    /// <param name="factor">By how much harder than planned the motion loads feet and anchors: a stop after a fault.</param>
    /// <param name="subject">The motion.</param>
    /// <param name="tolerance">What the swinging may use, with the pointer that says so; null where nothing does.</param>
    /// <param name="planned">The settling time planned, seconds, with its pointer, and whether it is what the frame asks rather than typed.</param>
    public static ImmutableArray<Finding> Under(
        FrameStudy study, JointSamples joints, CellFrame frame, FrameLoad load, double factor, Subject subject, (double Value, string Pointer)? tolerance, (double Value, string Pointer, bool Computed) planned,
        ImmutableArray<string> inputs)
    {
        if (!study.Usable) return [];
        if (!load.Reaction.IsFinite) return [new Unjudged(FrameRules.Settle, subject, inputs, OpenReason.NotComputed, [], FrameReasons.ReactionUnknown)];
        var findings = ImmutableArray.CreateBuilder<Finding>();
        if (tolerance is var (allowed, by))
        {
            foreach (var settling in Settling.Of(study, joints, load, allowed))
            {
                findings.Add(new Judged(
                    FrameRules.Settle, subject with { Case = settling.Wait }, Sorted(inputs, by, planned.Pointer), settling.Worst.Wait,
                    Limit.AtMost(planned.Value, planned.Computed ? new(SourceKind.Derived, "trivet", "docs/frame.md") : new(SourceKind.Cell, planned.Pointer)), Assurance.Sampled));
            }
        }

        var feet = FootLoads.Of(study, joints, load.Reaction, factor, frame.Feet.AnchorSpacing ?? double.NaN);
        var limits = frame.Limits;
        if (limits.LargestFootLoad is { } most)
        {
            findings.Add(new Judged(
                FrameRules.FootLoad, subject, Sorted(inputs, Limits + "largestFootLoad"), feet.Feet.Max(f => f.Largest), Limit.AtMost(most, Stated("largestFootLoad")), Assurance.Sampled));
        }

        if (frame.Feet.Anchored == true && limits.LargestAnchorPull is { } pull)
        {
            var anchors = Sorted(inputs, "/frame/feet/anchored", "/frame/feet/anchorSpacing", Limits + "largestAnchorPull", Limits + "largestAnchorShear");
            findings.Add(new Judged(
                FrameRules.Anchor, subject, anchors, feet.Feet.Max(f => f.Pull), Limit.AtMost(pull, Stated("largestAnchorPull")), Assurance.Sampled));
            if (limits.LargestAnchorShear is { } shear)
            {
                findings.Add(new Judged(FrameRules.AnchorShear, subject, anchors, feet.Feet.Max(f => f.Level), Limit.AtMost(shear, Stated("largestAnchorShear")), Assurance.Sampled));
                // EN 1992-4, 7.2.3, from memory: for what breaks in the concrete.
                double together = feet.Feet.Max(f => Math.Pow(Math.Max(0, f.Pull) / pull, 1.5) + Math.Pow(f.Level / shear, 1.5));
                findings.Add(new Judged(FrameRules.AnchorTogether, subject, anchors, together, Limit.AtMost(1, new(SourceKind.FromMemory, "EN-1992-4", "7.2.3")), Assurance.Sampled));
            }
        }
        else if (frame.Feet.Anchored == false)
        {
            var limit = limits.OverturningSafety is { } safety
                ? Limit.AtLeast(safety, Stated("overturningSafety")) : Limit.AtLeast(UsualOverturningSafety, new(SourceKind.CommonPractice, "", "local rules may ask for more"));
            // Nothing turns it over: as safe as can be told.
            findings.Add(new Judged(
                FrameRules.Overturning, subject, Sorted(inputs, "/frame/feet/anchored", Limits + "overturningSafety"), Math.Min(feet.Safety, 1000), limit, Assurance.Sampled));
        }

        return findings.ToImmutable();
    }

    /// <summary>How far the base is turned from level, radians.</summary>
    public static double TiltOf(MountMotion motion) => Math.Sqrt(motion.Turned.X * motion.Turned.X + motion.Turned.Y * motion.Turned.Y);

    private static Unjudged? Broken(FrameStudy study, ImmutableArray<string> inputs)
    {
        if (study.Usable) return null;
        string? loose = study.Soft.Loose ?? study.Stiff.Loose;
        return new(
            FrameRules.Described, new("/frame"), inputs, OpenReason.Failed, [], loose is null ? FrameReasons.NotConverged : FrameReasons.Loose.Naming(loose));
    }

    private static Source Stated(string limit) => new(SourceKind.Cell, Limits + limit);

    private static ImmutableArray<string> Sorted(ImmutableArray<string> inputs, params ReadOnlySpan<string> more) =>
        [.. inputs.Concat(more.ToArray()).Distinct().Order(StringComparer.Ordinal)];
}
