using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>The English texts of the rules about bring-up.</summary>
internal static class EnglishProcedures
{
    public static ImmutableDictionary<string, RuleText> Rules { get; } = new Dictionary<string, RuleText>
    {
        ["bringup.planned"] = new("what bring-up needs",
            "The steps of bring-up are computed from the description. A step whose number is not stated becomes a tick without a value, and a tick proves little.",
            "Each step notes the fields it reads; those it needs and does not find are named. Asked from the depth *build* on.",
            "none"),
        ["bringup.fault-noticed"] = new("chance to notice a fault",
            "A single thing that is wired, set or mounted wrong should be noticed by the procedure as it is, and not by the customer.\nThe faults are those of a catalogue of 58; of them those that this cell can have at all, at each axis, pair of axes or module that it has.",
            "Each step says by which probes it looks, each fault how often each probe would show it. A fault is missed only where every probe missed it; a probe that is repeated counts once, since who overlooks a thing overlooks it again. The odds are rough: only whether something is more likely noticed than not is used.",
            "more likely than not; common practice"),
        ["bringup.fault-before-harm"] = new("chance to notice a fault before it does harm",
            "A fault that can hurt people or destroy parts should be noticed before the first step in which it can.\nThis is an aid to the risk assessment and never a substitute for it: at best it is tight.",
            "As above, counted up to the first step that does what brings the harm. A step that keeps the harm small by itself (a few millimetres, slowly, over a prop, without air or part) may be the one that notices.",
            "more likely than not; common practice"),
    }.ToImmutableDictionary();
}
